// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import com.pixelmed.dicom.DicomInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Reads what stands behind the pixel data of a file that has passed the gate; the gate has bounded how much that can be.
 * Source: DICOM PS3.5, 7.1: attributes stand in the order of their tags, so few come after (7FE0,0010).
 */
final class Trailer {
    private Trailer() {}

    /**
     * Reads from a place in the file to its end.
     *
     * @param header whose character set holds here too
     */
    static DataSet read(Path file, long from, TransferSyntax syntax, DataSet header) throws IOException {
        if (from >= Files.size(file)) {
            return new DataSet();
        }
        TransferSyntax plain = syntax.encapsulated() ? TransferSyntax.EXPLICIT_LITTLE_ENDIAN : syntax;
        byte[] characterSet = Identifiers.write(new DataSet().copy(Tag.SPECIFIC_CHARACTER_SET, header), plain);
        AttributeList attributes = new AttributeList();
        try (SeekableByteChannel channel = Files.newByteChannel(file)) {
            InputStream rest = Channels.newInputStream(channel.position(from));
            InputStream both = new SequenceInputStream(new ByteArrayInputStream(characterSet), rest);
            DicomInputStream in = new DicomInputStream(both, plain.uid(), false);
            ToolkitLog.watch(() -> {
                attributes.read(in);
                return attributes;
            });
        } catch (DicomException e) {
            throw Fault.malformed("The toolkit cannot read what stands behind the pixel data");
        }
        return new DataSet(attributes).remove(Tag.SPECIFIC_CHARACTER_SET);
    }
}
