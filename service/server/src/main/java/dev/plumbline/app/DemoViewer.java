// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A web viewer of others on loopback beside the demo's service. Its files are not part of this program: the launcher
 * brings them from npm and says where they lie ({@value #PLACE}); a small Node.js script serves them.
 */
final class DemoViewer implements AutoCloseable {
    static final String PLACE = "plumbline.viewer";
    private static final String REMEDY = "Start the demo with ./plumbline demo --viewer, which brings the viewer; it"
            + " needs Node.js 18 or later with npm.";

    private final Process process;
    private final URI address;

    private DemoViewer(Process process, URI address) {
        this.process = process;
        this.address = address;
    }

    /** @throws Refusal where the viewer has not been brought, or what it is served with is not here */
    static void requireThere() {
        script();
        node(ProcessBuilder.Redirect.DISCARD, "--version");
    }

    private static Process node(ProcessBuilder.Redirect out, String... arguments) {
        List<String> command = new ArrayList<>(List.of("node"));
        command.addAll(List.of(arguments));
        try {
            return new ProcessBuilder(command)
                    .redirectOutput(out)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
        } catch (IOException e) {
            throw new Refusal(new Problem.NotHeld("", "Node.js cannot be started here.", REMEDY));
        }
    }

    private static Path script() {
        Path script = Path.of(System.getProperty(PLACE, "")).resolve("serve.mjs");
        if (!Files.isRegularFile(script) || !Files.isDirectory(script.resolveSibling("ohif-app"))) {
            throw new Refusal(new Problem.NotHeld("", "The viewer's files are not here.", REMEDY));
        }
        return script;
    }

    /**
     * @param service whose archive the viewer shows
     * @throws Refusal where it does not start
     */
    static DemoViewer start(URI service) throws IOException {
        Process process = node(ProcessBuilder.Redirect.PIPE, script().toString(), service.toString());
        BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String line = out.readLine();
        if (line == null) {
            throw new Refusal(new Problem.NotHeld("", "The viewer does not start.", REMEDY));
        }
        return new DemoViewer(process, URI.create(line));
    }

    URI address() {
        return address;
    }

    @Override
    public void close() {
        process.destroy();
    }
}
