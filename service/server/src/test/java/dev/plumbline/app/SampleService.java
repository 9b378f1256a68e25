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
import java.net.URI;
import java.nio.file.Path;

/** A service on a free loopback port with what ships, and a client of it. */
record SampleService(Service service, DemoClient client) implements AutoCloseable {
    static SampleService start(Path data) throws IOException {
        return start(data, Network.NONE);
    }

    static SampleService start(Path data, Network network) throws IOException {
        Service service = Service.start(new Service.Settings(
                data,
                Doors.Address.loopback(0),
                "Sample Hospital",
                ServiceConfig.USUAL.country(),
                new Service.Uses(
                        BedsideFiles.shipped(),
                        new Doors.Catalogues(NeedleFile.shipped(), TransducerFile.shipped()),
                        Companions.ALL,
                        IntakeLimits.NONE),
                network));
        return new SampleService(service, new DemoClient(URI.create("http://127.0.0.1:" + service.port() + "/")));
    }

    @Override
    public void close() throws IOException {
        service.close();
    }
}
