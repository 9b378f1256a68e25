// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.util.Optional;

/** A library of the system that may be missing; asked for once. */
final class NativeLibrary<L extends Library> {
    static final NativeLibrary<CharlsLibrary> CHARLS = new NativeLibrary<>(CharlsLibrary.FILE, CharlsLibrary.class);
    static final NativeLibrary<OpenJpegLibrary> OPENJPEG =
            new NativeLibrary<>(OpenJpegLibrary.FILE, OpenJpegLibrary.class);

    private final String file;
    private final Class<L> functions;
    private Optional<L> loaded = Optional.empty();

    private NativeLibrary(String file, Class<L> functions) {
        this.file = file;
        this.functions = functions;
    }

    String file() {
        return file;
    }

    /** The functions of the library; an UnsatisfiedLinkError if the system does not have it. */
    synchronized L functions() {
        if (loaded.isEmpty()) {
            loaded = Optional.of(Native.load(file, functions));
        }
        return loaded.get();
    }

    boolean isPresent() {
        try {
            functions();
            return true;
        } catch (UnsatisfiedLinkError e) {
            return false;
        }
    }
}
