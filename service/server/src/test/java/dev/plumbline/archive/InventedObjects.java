// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.util.Locale;

/** Small ultrasound images of invented people, made for tests. UIDs are derived from the numbers given. */
public final class InventedObjects {
    public static final String ULTRASOUND = "1.2.840.10008.5.1.4.1.1.6.1";
    public static final String MULTI_FRAME = "1.2.840.10008.5.1.4.1.1.3.1";
    public static final int ROWS = 8;
    public static final int COLUMNS = 10;

    private InventedObjects() {}

    public static String studyUid(int study) {
        return "2.25.1000" + study;
    }

    public static String seriesUid(int study, int series) {
        return studyUid(study) + "." + series;
    }

    public static String instanceUid(int study, int series, int instance) {
        return seriesUid(study, series) + "." + instance;
    }

    /** A grey image whose samples count up from the instance's number. */
    public static DataSet image(int study, int series, int instance) {
        byte[] samples = new byte[ROWS * COLUMNS];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (byte) (instance + i);
        }
        return header(study, series, instance)
                .put(Tag.SOP_CLASS_UID, ULTRASOUND)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.PIXEL_DATA, samples);
    }

    /** Frame n (from 1) is filled with the value n. */
    public static DataSet cine(int study, int series, int instance, int frames) {
        byte[] samples = new byte[frames * ROWS * COLUMNS];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (byte) (i / (ROWS * COLUMNS) + 1);
        }
        return header(study, series, instance)
                .put(Tag.SOP_CLASS_UID, MULTI_FRAME)
                .put(Tag.NUMBER_OF_FRAMES, Integer.toString(frames))
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.PIXEL_DATA, samples);
    }

    /** A grey image of 16 bits whose two bytes always differ. */
    public static DataSet deep(int study, int series, int instance) {
        short[] samples = new short[ROWS * COLUMNS];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) (0x0100 * (i + 1) + i % 3);
        }
        return header(study, series, instance)
                .put(Tag.SOP_CLASS_UID, ULTRASOUND)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.BITS_ALLOCATED, 16)
                .put(Tag.BITS_STORED, 16)
                .put(Tag.HIGH_BIT, 15)
                .put(Tag.PIXEL_DATA, samples);
    }

    /** A document in its DICOM envelope. */
    public static DataSet document(int study, int series, int instance, byte[] pdf) {
        return general(study, series, instance)
                .put(Tag.SOP_CLASS_UID, "1.2.840.10008.5.1.4.1.1.104.1")
                .put(Tag.MIME_TYPE_OF_ENCAPSULATED_DOCUMENT, "application/pdf")
                .put(Tag.ENCAPSULATED_DOCUMENT, pdf);
    }

    private static DataSet header(int study, int series, int instance) {
        return general(study, series, instance)
                .put(Tag.IMAGE_TYPE, "ORIGINAL", "PRIMARY")
                .put(Tag.SAMPLES_PER_PIXEL, 1)
                .put(Tag.PHOTOMETRIC_INTERPRETATION, "MONOCHROME2")
                .put(Tag.BITS_ALLOCATED, 8)
                .put(Tag.BITS_STORED, 8)
                .put(Tag.HIGH_BIT, 7)
                .put(Tag.PIXEL_REPRESENTATION, 0);
    }

    private static DataSet general(int study, int series, int instance) {
        return new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .put(Tag.SOP_INSTANCE_UID, instanceUid(study, series, instance))
                .put(Tag.STUDY_DATE, String.format(Locale.ROOT, "202601%02d", study))
                .put(Tag.STUDY_TIME, "101500")
                .put(Tag.ACCESSION_NUMBER, "ACC" + study)
                .put(Tag.MODALITY, "US")
                .putEmpty(Tag.REFERRING_PHYSICIAN_NAME)
                .put(Tag.STUDY_DESCRIPTION, "Invented study " + study)
                .put(Tag.SERIES_DESCRIPTION, "Invented series " + series)
                .put(Tag.PATIENT_NAME, "Invented^Person " + study)
                .put(Tag.PATIENT_ID, "INVENTED-" + study)
                .put(Tag.PATIENT_BIRTH_DATE, "19700101")
                .put(Tag.PATIENT_SEX, "O")
                .put(Tag.STUDY_INSTANCE_UID, studyUid(study))
                .put(Tag.SERIES_INSTANCE_UID, seriesUid(study, series))
                .put(Tag.STUDY_ID, "S" + study)
                .put(Tag.SERIES_NUMBER, Integer.toString(series))
                .put(Tag.INSTANCE_NUMBER, Integer.toString(instance));
    }

    /** The file of {@link #image}. */
    public static byte[] imageFile(int study, int series, int instance) {
        return DicomFile.encode(image(study, series, instance));
    }
}
