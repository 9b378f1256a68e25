// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.DicomException;
import com.pixelmed.display.BufferedImageUtilities;
import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/**
 * Listens to what the toolkit logs instead of throwing, and keeps its words, which may hold patient data, off every other
 * log.
 */
final class ToolkitLog {
    private static final Logger TOOLKIT = Logger.getLogger("com.pixelmed");
    private static final ThreadLocal<AtomicInteger> SEVERE = ThreadLocal.withInitial(AtomicInteger::new);

    static {
        initialiseImageUtilities();
        TOOLKIT.setUseParentHandlers(false);
        TOOLKIT.addHandler(new Handler() {
            @Override
            public void publish(LogRecord message) {
                if (message.getLevel().intValue() >= Level.SEVERE.intValue()) {
                    SEVERE.get().incrementAndGet();
                }
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        });
    }

    private ToolkitLog() {}

    /**
     * Without a display this class of the toolkit logs a fault when it is first used, which would be blamed on the first
     * colour JPEG; so it is used here, where nobody listens yet.
     */
    private static void initialiseImageUtilities() {
        TOOLKIT.setLevel(Level.OFF);
        try {
            MethodHandles.lookup().ensureInitialized(BufferedImageUtilities.class);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("The toolkit's class is public.", e);
        } finally {
            TOOLKIT.setLevel(Level.SEVERE);
        }
    }

    /** Something the toolkit does on this thread. */
    interface Work<T> {
        T run() throws DicomException, IOException;
    }

    /** Runs the work and refuses its result if the toolkit logged that something went wrong. */
    static <T> T watch(Work<T> work) throws DicomException, IOException {
        AtomicInteger severe = SEVERE.get();
        severe.set(0);
        T result = work.run();
        if (severe.get() > 0) {
            throw Fault.malformed("The toolkit found " + severe.get() + " faults in the object");
        }
        return result;
    }
}
