// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.config.BedsideFiles;
import dev.plumbline.config.IntakeLimits;
import dev.plumbline.config.NeedleFile;
import dev.plumbline.config.Network;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.config.TransducerFile;
import dev.plumbline.http.Doors;
import dev.plumbline.record.Companions;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code demo [--once] [--out DIR] [--viewer]}. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Plays two invented cases through the service, from frame to record and back, and keeps serving.")
final class DemoCommand implements Callable<Integer> {
    private static final int USUAL_PORT = 8642;

    private final PrintWriter say;

    @Option(names = "--once", description = "Ends when the cases are played.")
    private boolean once;

    @Option(names = "--out", paramLabel = "DIR", description = "Where the products go; a temporary folder otherwise.")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--port",
            paramLabel = "N",
            description = "Port on loopback; ${DEFAULT-VALUE} otherwise, 0 for any.")
    private int port = USUAL_PORT;

    @Option(
            names = "--viewer",
            description = "Serves a web viewer of others beside the service; ./plumbline brings it from npm.")
    private boolean viewer;

    DemoCommand(PrintWriter say) {
        this.say = say;
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        if (viewer) {
            DemoViewer.requireThere();
        }
        Path products =
                out.isPresent() ? Files.createDirectories(out.get()) : Files.createTempDirectory("plumbline-demo-");
        Service.Settings settings = new Service.Settings(
                products.resolve("archive"),
                Doors.Address.loopback(once ? 0 : port),
                "Sample Hospital",
                ServiceConfig.USUAL.country(),
                new Service.Uses(
                        BedsideFiles.shipped(),
                        new Doors.Catalogues(NeedleFile.shipped(), TransducerFile.shipped()),
                        Companions.ALL,
                        IntakeLimits.NONE),
                Network.NONE);
        try (StopSignal stop = new StopSignal();
                Service service = Service.start(settings)) {
            URI address = URI.create("http://127.0.0.1:" + service.port() + "/");
            say.println("Plumbline demo: two invented cases, played through " + address);
            Demo demo = new Demo(new DemoClient(address), products, say);
            demo.play();
            say.println();
            say.println("products  " + products);
            if (!once) {
                say.println("service   " + address + "  (v1/records lists the records; Ctrl-C stops)");
                serve(address, demo, stop);
            }
        }
        return 0;
    }

    private void serve(URI address, Demo demo, StopSignal stop) throws IOException, InterruptedException {
        if (!viewer) {
            stop.await();
            return;
        }
        try (DemoViewer beside = DemoViewer.start(address)) {
            String study = demo.toDrawOn();
            say.println("viewer    " + beside.address() + "  (choose a study, then a series on the left)");
            say.println("draw on   " + beside.address() + "viewer?StudyInstanceUIDs=" + study);
            say.println(
                    "          lines named skin and shaft, an arrow named target, then Create SR (docs/viewers.md);");
            say.println("          what became of them: " + address + "v1/studies/" + study + "/marks");
            say.flush();
            stop.await();
        }
    }
}
