// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.procedure.SightDetail;

/**
 * This installation of the program, as it names itself in every object it makes; never the scanner.
 *
 * @param deviceObserverUid made once per installation and kept
 * @param name of the device observer, such as a host or department name
 * @param country of the language, ISO 3166-1 alpha-2
 * @param sightDetail how much of the search for the needle goes into a record whose case does not say
 */
public record Installation(
        String deviceObserverUid,
        String name,
        String model,
        String serialNumber,
        String softwareVersion,
        String institution,
        String country,
        SightDetail sightDetail) {
    public static final String MANUFACTURER = "Plumbline";

    public Installation {
        if (!country.matches("[A-Z]{2}")) {
            throw new IllegalArgumentException("The country is two capital letters of ISO 3166-1.");
        }
    }

    /** The same where the institution is this one. */
    Installation at(String where) {
        return new Installation(
                deviceObserverUid, name, model, serialNumber, softwareVersion, where, country, sightDetail);
    }
}
