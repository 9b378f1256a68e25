// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The kinds of transducer a site has, in the order it lists them. */
public record TransducerCatalogue(List<Transducer> transducers) {
    public TransducerCatalogue {
        transducers = List.copyOf(transducers);
        Set<String> ids = new HashSet<>();
        for (Transducer transducer : transducers) {
            if (!ids.add(transducer.id())) {
                throw new IllegalArgumentException("Two transducers are called " + transducer.id() + ".");
            }
        }
    }

    public Optional<Transducer> byId(String id) {
        return transducers.stream().filter(t -> t.id().equals(id)).findFirst();
    }
}
