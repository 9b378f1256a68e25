// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Ultrasound objects with a pattern that shows any mix-up of rows, columns, bands, bytes and frames. */
final class TestImage {
    static final int ROWS = 48;
    static final int COLUMNS = 64;

    private TestImage() {}

    /** Everything of a US image but its pixels. */
    static DataSet ultrasound(String sopClassUid) {
        return new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .put(Tag.IMAGE_TYPE, "ORIGINAL", "PRIMARY")
                .put(Tag.SOP_CLASS_UID, sopClassUid)
                .put(Tag.SOP_INSTANCE_UID, "2.25.42")
                .put(Tag.STUDY_DATE, "20260105")
                .put(Tag.STUDY_TIME, "101500")
                .putEmpty(Tag.ACCESSION_NUMBER)
                .put(Tag.MODALITY, "US")
                .put(Tag.MANUFACTURER, "Plumbline Test Scanners")
                .putEmpty(Tag.REFERRING_PHYSICIAN_NAME)
                .put(Tag.MANUFACTURER_MODEL_NAME, "Pattern 1")
                .put(Tag.PATIENT_NAME, "Pattern^Test")
                .put(Tag.PATIENT_ID, "TEST-1")
                .putEmpty(Tag.PATIENT_BIRTH_DATE)
                .putEmpty(Tag.PATIENT_SEX)
                .put(Tag.DEVICE_SERIAL_NUMBER, "T-0001")
                .put(Tag.STUDY_INSTANCE_UID, "2.25.40")
                .put(Tag.SERIES_INSTANCE_UID, "2.25.41")
                .put(Tag.STUDY_ID, "1")
                .put(Tag.SERIES_NUMBER, "1")
                .put(Tag.INSTANCE_NUMBER, "1")
                .putEmpty(Tag.PATIENT_ORIENTATION)
                .putEmpty(Tag.LATERALITY);
    }

    /** Image pixel module for 8-bit samples. */
    static DataSet pixelModule(DataSet dataSet, String photometric, int frames) {
        boolean single = photometric.startsWith("MONO") || photometric.startsWith("PAL");
        dataSet.put(Tag.SAMPLES_PER_PIXEL, single ? 1 : 3)
                .put(Tag.PHOTOMETRIC_INTERPRETATION, photometric)
                .put(Tag.ROWS, ROWS)
                .put(Tag.COLUMNS, COLUMNS)
                .put(Tag.BITS_ALLOCATED, 8)
                .put(Tag.BITS_STORED, 8)
                .put(Tag.HIGH_BIT, 7)
                .put(Tag.PIXEL_REPRESENTATION, 0)
                .put(Tag.LOSSY_IMAGE_COMPRESSION, "00");
        if (!single) {
            dataSet.put(Tag.PLANAR_CONFIGURATION, 0);
        }
        if (frames > 1) {
            dataSet.put(Tag.NUMBER_OF_FRAMES, Integer.toString(frames))
                    .put(Tag.FRAME_TIME, "40.0")
                    .putPointer(Tag.FRAME_INCREMENT_POINTER, Tag.FRAME_TIME);
        }
        return dataSet;
    }

    /** Sample of the pattern; smooth, so that lossy codecs keep it. */
    static int sample(int frame, int row, int column, int band) {
        double wave = Math.sin((row + 3.0 * band) / 7) * Math.cos((column + 5.0 * frame) / 9);
        return (int) Math.round(128 + 100 * wave);
    }

    /** Pixel-interleaved samples of all frames. */
    static byte[] pattern(int frames, int bands) {
        byte[] bytes = new byte[frames * ROWS * COLUMNS * bands];
        int at = 0;
        for (int frame = 0; frame < frames; frame++) {
            for (int row = 0; row < ROWS; row++) {
                for (int column = 0; column < COLUMNS; column++) {
                    for (int band = 0; band < bands; band++) {
                        bytes[at++] = (byte) sample(frame, row, column, band);
                    }
                }
            }
        }
        return bytes;
    }

    static DataSet grey(int frames) {
        String sopClass = frames > 1 ? FrameClass.US_MULTIFRAME : FrameClass.US_IMAGE;
        return pixelModule(ultrasound(sopClass), "MONOCHROME2", frames).put(Tag.PIXEL_DATA, pattern(frames, 1));
    }

    static DataSet rgb(int frames) {
        String sopClass = frames > 1 ? FrameClass.US_MULTIFRAME : FrameClass.US_IMAGE;
        return pixelModule(ultrasound(sopClass), "RGB", frames).put(Tag.PIXEL_DATA, pattern(frames, 3));
    }

    /** 12 bits stored of 16, the whole range in use. */
    static DataSet grey16() {
        short[] words = new short[ROWS * COLUMNS];
        for (int i = 0; i < words.length; i++) {
            words[i] = (short) (sample(0, i / COLUMNS, i % COLUMNS, 0) * 16 + i % 16);
        }
        return pixelModule(ultrasound(FrameClass.SECONDARY_CAPTURE), "MONOCHROME2", 1)
                .put(Tag.CONVERSION_TYPE, "WSD")
                .put(Tag.BITS_ALLOCATED, 16)
                .put(Tag.BITS_STORED, 12)
                .put(Tag.HIGH_BIT, 11)
                .put(Tag.PIXEL_DATA, words);
    }

    /** Indices into three tables of 256 entries with 16 bits. */
    static DataSet palette() {
        DataSet image = pixelModule(ultrasound(FrameClass.US_IMAGE), "PALETTE COLOR", 1);
        for (int colour = 0; colour < 3; colour++) {
            short[] table = new short[256];
            for (int i = 0; i < table.length; i++) {
                table[i] = (short) ((i * (colour + 1) * 37 % 256) * 257);
            }
            image.put(Tag.RED_PALETTE_COLOR_LOOKUP_TABLE_DESCRIPTOR + colour, 256, 0, 16)
                    .put(Tag.RED_PALETTE_COLOR_LOOKUP_TABLE_DATA + colour, table);
        }
        return image.put(Tag.PIXEL_DATA, pattern(1, 1));
    }

    /** RGB, one plane after the other. */
    static DataSet planar() {
        byte[] interleaved = pattern(1, 3);
        byte[] planes = new byte[interleaved.length];
        for (int i = 0; i < interleaved.length; i++) {
            planes[i % 3 * ROWS * COLUMNS + i / 3] = interleaved[i];
        }
        return rgb(1).put(Tag.PLANAR_CONFIGURATION, 1).put(Tag.PIXEL_DATA, planes);
    }

    /** YBR_FULL_422: two luminances share one Cb and one Cr. */
    static DataSet subsampled() {
        byte[] full = pattern(1, 3);
        byte[] bytes = new byte[ROWS * COLUMNS * 2];
        for (int pair = 0; pair < bytes.length / 4; pair++) {
            bytes[4 * pair] = full[6 * pair];
            bytes[4 * pair + 1] = full[6 * pair + 3];
            bytes[4 * pair + 2] = full[6 * pair + 1];
            bytes[4 * pair + 3] = full[6 * pair + 2];
        }
        return rgb(1).put(Tag.PHOTOMETRIC_INTERPRETATION, "YBR_FULL_422").put(Tag.PIXEL_DATA, bytes);
    }

    /** One usable region over the whole image, with different scales on its two axes. */
    static DataSet region(double cmPerColumn, double cmPerRow) {
        return new DataSet()
                .put(Tag.REGION_SPATIAL_FORMAT, 1)
                .put(Tag.REGION_DATA_TYPE, 1)
                .put(Tag.REGION_FLAGS, 0)
                .put(Tag.REGION_LOCATION_MIN_X0, 0)
                .put(Tag.REGION_LOCATION_MIN_Y0, 0)
                .put(Tag.REGION_LOCATION_MAX_X1, COLUMNS - 1)
                .put(Tag.REGION_LOCATION_MAX_Y1, ROWS - 1)
                .put(Tag.PHYSICAL_UNITS_X_DIRECTION, 3)
                .put(Tag.PHYSICAL_UNITS_Y_DIRECTION, 3)
                .put(Tag.PHYSICAL_DELTA_X, cmPerColumn)
                .put(Tag.PHYSICAL_DELTA_Y, cmPerRow);
    }

    static DataSet withRegions(DataSet image, DataSet... regions) {
        return image.put(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS, List.of(regions));
    }

    static Path write(DataSet dataSet, Path folder) {
        try {
            return Files.write(Files.createTempFile(folder, "image", ".dcm"), DicomFile.encode(dataSet));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
