// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;

/** A configuration with everything that holds, defaults included. What files hold is never shown, only their names. */
final class EffectiveConfig {
    private EffectiveConfig() {}

    static ObjectNode of(ServiceConfig config) {
        ObjectNode root = JsonNodeFactory.instance
                .objectNode()
                .put("host", config.host())
                .put("port", config.port())
                .put("dataFolder", config.dataFolder().map(Path::toString).orElse("the usual place"))
                .put("institution", config.institution())
                .put("country", config.country());
        ObjectNode intake = root.putObject("intake");
        IntakeLimits.put(intake, "objectMegabytes", config.intake().objectBytes());
        IntakeLimits.put(intake, "httpDailyMegabytes", config.intake().httpDailyBytes());
        Network network = config.network();
        ObjectNode dicom = root.putObject("dicom").put("aeTitle", network.aeTitle());
        network.door()
                .ifPresentOrElse(
                        door -> {
                            dicom.put("host", door.host()).put("port", door.port());
                            tls(dicom, door.tls());
                            dicom.put("associations", door.associations()).put("associationsPerPeer", door.perPeer());
                        },
                        () -> dicom.putNull("port"));
        Network.Waits waits = network.waits();
        dicom.put("artimSeconds", waits.artimSeconds())
                .put("idleSeconds", waits.idleSeconds())
                .put("connectSeconds", waits.connectSeconds())
                .put("responseSeconds", waits.responseSeconds());
        ArrayNode peers = root.putArray("peers");
        network.peers().forEach(peer -> peer(peers.addObject(), peer));
        return root;
    }

    private static void peer(ObjectNode node, SitePeer peer) {
        node.put("name", peer.name());
        peer.dicom().ifPresent(dicom -> {
            node.put("aeTitle", dicom.aeTitle());
            dicom.at().ifPresent(place -> {
                node.put("host", place.host()).put("port", place.port());
                tls(node, place.tls());
            });
            ArrayNode addresses = node.putArray("addresses");
            dicom.addresses().forEach(addresses::add);
            ArrayNode certificates = node.putArray("certificates");
            dicom.from().certificates().forEach(certificates::add);
            IntakeLimits.put(node, "dailyMegabytes", dicom.from().dailyBytes());
            node.put("proof", dicom.proof().word());
        });
        peer.web().ifPresent(web -> {
            node.put("url", web.url().toString());
            node.put("tokenFile", web.tokenFile().map(Path::toString).orElse(null));
            tls(node, web.tls());
        });
        ArrayNode uses = node.putArray("uses");
        peer.uses().forEach(use -> uses.add(use.word()));
    }

    private static void tls(ObjectNode node, Optional<TlsFiles> files) {
        if (files.isEmpty()) {
            node.putNull("tls");
            return;
        }
        node.putObject("tls")
                .put(
                        "certificate",
                        files.get().certificate().map(Path::toString).orElse(null))
                .put("key", files.get().key().map(Path::toString).orElse(null))
                .put("trust", files.get().trust().map(Path::toString).orElse("what the Java platform trusts"));
    }
}
