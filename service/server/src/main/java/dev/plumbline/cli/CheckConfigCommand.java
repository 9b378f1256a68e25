// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.config.Network;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.config.SitePeer;
import dev.plumbline.config.TlsFiles;
import dev.plumbline.dispatch.SitePeers;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code check-config}. */
@Command(
        name = "check-config",
        mixinStandardHelpOptions = true,
        description =
                "Reads a configuration as the service would and prints what holds, defaults included, no secrets.")
final class CheckConfigCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Clock clock;

    @Mixin
    private SiteOption site = new SiteOption();

    CheckConfigCommand(Terminal terminal, Clock clock) {
        this.terminal = terminal;
        this.clock = clock;
    }

    @Override
    public Integer call() {
        ServiceConfig config = site.read();
        Network network = config.network();
        network.door().flatMap(Network.Door::tls).ifPresent(TlsFiles::context);
        new SitePeers(network, clock).callers();
        network.peers().forEach(CheckConfigCommand::requireFiles);
        terminal.json(config.effective());
        return ExitCode.YES;
    }

    private static void requireFiles(SitePeer peer) {
        peer.dicom().flatMap(SitePeer.Dicom::at).flatMap(SitePeer.Place::tls).ifPresent(TlsFiles::context);
        peer.web().flatMap(SitePeer.Web::tls).ifPresent(TlsFiles::context);
        peer.web().flatMap(SitePeer.Web::tokenFile).ifPresent(file -> requireReadable(peer, file));
    }

    private static void requireReadable(SitePeer peer, Path file) {
        if (!Files.isReadable(file)) {
            throw new Refusal(new Problem.InvalidValue(
                    "/peers",
                    "The token file of " + peer.name() + " cannot be read: " + file,
                    "Put the bearer token there, readable by the service."));
        }
    }
}
