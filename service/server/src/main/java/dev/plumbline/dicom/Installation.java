// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/**
 * This installation of the program, as it names itself in every object it makes; never the scanner.
 *
 * @param deviceObserverUid made once per installation and kept
 * @param name of the device observer, such as a host or department name
 * @param country of the language, ISO 3166-1 alpha-2
 */
public record Installation(
        String deviceObserverUid,
        String name,
        String model,
        String serialNumber,
        String softwareVersion,
        String institution,
        String country) {
    public static final String MANUFACTURER = "Plumbline";

    public Installation {
        if (!country.matches("[A-Z]{2}")) {
            throw new IllegalArgumentException("The country is two capital letters of ISO 3166-1.");
        }
    }
}
