// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A stream of which not more than so much is read. */
final class CappedStream extends FilterInputStream {
    private long left;

    /** There is more than may be read. Unchecked, so that whoever reads need not know of it. */
    static final class TooLong extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    CappedStream(InputStream in, long most) {
        super(in);
        this.left = most;
    }

    @Override
    public int read() throws IOException {
        int one = super.read();
        count(one < 0 ? 0 : 1);
        return one;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        int count = super.read(into, offset, length);
        count(Math.max(0, count));
        return count;
    }

    private void count(int bytes) {
        left -= bytes;
        if (left < 0) {
            throw new TooLong();
        }
    }
}
