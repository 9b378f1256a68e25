// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.cli.Plumbline;
import dev.plumbline.cli.SiteCommands;
import dev.plumbline.cli.Terminal;
import dev.plumbline.config.BedsideFiles;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.config.TransducerFile;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.http.Doors;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/** Where the program starts: makes everything, hands it to the command line. */
public final class Main {
    /** Named by every record that is made without a service; a UID of ours, made once for all (PS3.5, B.2). */
    private static final String COMMAND_LINE_UID = "2.25.281476932155049811902836041186424402213";

    /** What they say at every start and stop is of no use to a site; held here because loggers are weakly kept. */
    private static final List<Logger> SERVERS =
            List.of(Logger.getLogger("io.javalin"), Logger.getLogger("org.eclipse.jetty"));

    private Main() {}

    /** Runs one command and ends with its exit code. */
    public static void main(String[] arguments) {
        SERVERS.forEach(server -> server.setLevel(Level.WARNING));
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int code = plumbline(out, err).run(arguments);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /** Whatever the locale says: the same bytes everywhere. */
    private static PrintWriter utf8(FileDescriptor descriptor) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), true);
    }

    static Plumbline plumbline(PrintWriter out, PrintWriter err) {
        Clock clock = Clock.system(ZoneId.systemDefault());
        return new Plumbline(
                        new Plumbline.Collaborators(
                                Version.text(),
                                new RecordComposer(commandLine()),
                                BedsideFiles.shipped(),
                                clock,
                                config -> serve(config, err),
                                new Plumbline.Streams(System.in, new FileOutputStream(FileDescriptor.out))),
                        out,
                        err)
                .with(new DemoCommand(out))
                .with(new SiteCommands(
                        new Terminal(out, err),
                        clock,
                        Main::usualFolder,
                        (config, work) -> Service.inFolder(settings(config), clock, work)));
    }

    private static Installation commandLine() {
        String serial = COMMAND_LINE_UID.substring(COMMAND_LINE_UID.length() - 12);
        return new Installation(
                COMMAND_LINE_UID,
                "Plumbline",
                "Plumbline",
                serial,
                Version.text(),
                "",
                ServiceConfig.USUAL.country(),
                BedsideFiles.shipped().signing().sightDetail());
    }

    private static void serve(Optional<Path> configFile, PrintWriter err) throws Exception {
        ServiceConfig config = configFile.map(ServiceConfig::read).orElse(ServiceConfig.USUAL);
        Service.Settings settings = settings(config);
        try (StopSignal stop = new StopSignal();
                Service service = Service.start(settings)) {
            err.println("plumbline: listening at http://" + config.host() + ":" + service.port() + "/");
            service.dicomPort()
                    .ifPresent(port -> err.println(
                            "plumbline: " + config.network().aeTitle() + " accepts associations at port " + port));
            stop.await();
        } catch (StoreDamaged damage) {
            serveDegraded(settings, damage, err);
        }
    }

    private static void serveDegraded(Service.Settings settings, StoreDamaged damage, PrintWriter err)
            throws InterruptedException {
        try (StopSignal stop = new StopSignal();
                Doors doors = Service.degraded(settings, damage)) {
            err.println("plumbline: degraded: " + damage.getMessage());
            err.println("plumbline: only status and health are answered, at http://"
                    + settings.address().host() + ":" + doors.port() + "/");
            stop.await();
        }
    }

    static Service.Settings settings(ServiceConfig config) {
        return new Service.Settings(
                config.dataFolder().orElseGet(Main::usualFolder),
                new Doors.Address(config.host(), config.port()),
                config.institution(),
                config.country(),
                new Service.Uses(
                        config.site(),
                        new Doors.Catalogues(
                                config.needles().map(NeedleFile::read).orElseGet(NeedleFile::shipped),
                                config.transducers().map(TransducerFile::read).orElseGet(TransducerFile::shipped)),
                        config.companions(),
                        config.intake()),
                config.network());
    }

    /** Source: XDG Base Directory Specification, user data. */
    private static Path usualFolder() {
        return Optional.ofNullable(System.getenv("XDG_DATA_HOME"))
                .filter(folder -> !folder.isBlank())
                .map(Path::of)
                .orElseGet(() -> Path.of(System.getProperty("user.home"), ".local", "share"))
                .resolve("plumbline");
    }
}
