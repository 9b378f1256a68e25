// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * A command set: group 0000 in Implicit VR Little Endian, whatever the transfer syntax of the data. Source: DICOM PS3.7,
 * 6.3.1 and annex E.
 */
final class CommandSet {
    /** Longest that is read; real ones have a few hundred bytes. Source: design choice. */
    static final int LONGEST = 64 * 1024;

    /** In Command Data Set Type: no data set follows. Anything else says that one does. */
    static final int NO_DATA_SET = 0x0101;

    private static final int DATA_SET = 0x0001;
    private static final int HEADER_BYTES = 8;
    private static final int LONGEST_COMMENT = 64;

    private final Map<Integer, byte[]> elements = new TreeMap<>();

    /** A request of a service of type C. */
    static CommandSet request(int commandField, int messageId, String affectedSopClass) {
        return new CommandSet()
                .putUid(CommandElement.AFFECTED_SOP_CLASS_UID, affectedSopClass)
                .put(CommandElement.COMMAND_FIELD, commandField)
                .put(CommandElement.MESSAGE_ID, messageId)
                .withoutDataSet();
    }

    /** The answer to a request, with the UIDs it was about. */
    static CommandSet response(CommandSet request, Reply reply) {
        CommandSet response = new CommandSet();
        response.copy(CommandElement.AFFECTED_SOP_CLASS_UID, request);
        response.put(
                CommandElement.COMMAND_FIELD,
                request.number(CommandElement.COMMAND_FIELD).orElse(0) | CommandField.RESPONSE);
        response.put(
                CommandElement.MESSAGE_ID_BEING_RESPONDED_TO,
                request.number(CommandElement.MESSAGE_ID).orElse(0));
        response.copy(CommandElement.AFFECTED_SOP_INSTANCE_UID, request);
        response.copy(CommandElement.EVENT_TYPE_ID, request);
        response.put(CommandElement.STATUS, reply.status());
        if (!reply.comment().isEmpty()) {
            response.putText(CommandElement.ERROR_COMMENT, reply.comment());
        }
        return response.withoutDataSet();
    }

    CommandSet put(int element, int number) {
        elements.put(element, new byte[] {(byte) number, (byte) (number >> Byte.SIZE)});
        return this;
    }

    CommandSet putUid(int element, String uid) {
        byte[] bytes = uid.getBytes(StandardCharsets.US_ASCII);
        elements.put(element, bytes.length % 2 == 0 ? bytes : (uid + "\0").getBytes(StandardCharsets.US_ASCII));
        return this;
    }

    /** LO: cut to what may stand there, outside ASCII replaced. */
    private CommandSet putText(int element, String text) {
        String cut = text.substring(0, Math.min(text.length(), LONGEST_COMMENT)).replace('\\', '/');
        String even = cut.length() % 2 == 0 ? cut : cut + " ";
        elements.put(element, even.getBytes(StandardCharsets.US_ASCII));
        return this;
    }

    private void copy(int element, CommandSet from) {
        byte[] value = from.elements.get(element);
        if (value != null) {
            elements.put(element, value);
        }
    }

    CommandSet withDataSet() {
        return put(CommandElement.COMMAND_DATA_SET_TYPE, DATA_SET);
    }

    private CommandSet withoutDataSet() {
        return put(CommandElement.COMMAND_DATA_SET_TYPE, NO_DATA_SET);
    }

    boolean announcesDataSet() {
        return number(CommandElement.COMMAND_DATA_SET_TYPE).orElse(NO_DATA_SET) != NO_DATA_SET;
    }

    OptionalInt number(int element) {
        byte[] value = elements.get(element);
        return value == null || value.length < 2
                ? OptionalInt.empty()
                : OptionalInt.of((value[0] & 0xff) | (value[1] & 0xff) << Byte.SIZE);
    }

    /** Text or a UID without its padding; empty where absent or blank. */
    Optional<String> text(int element) {
        byte[] value = elements.get(element);
        return value == null
                ? Optional.empty()
                : Optional.of(new String(value, StandardCharsets.ISO_8859_1)
                                .replace("\0", "")
                                .strip())
                        .filter(text -> !text.isEmpty());
    }

    byte[] encode() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        elements.forEach((element, value) -> {
            out.writeBytes(header(element, value.length));
            out.writeBytes(value);
        });
        byte[] rest = out.toByteArray();
        return ByteBuffer.allocate(HEADER_BYTES + Integer.BYTES + rest.length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(header(CommandElement.GROUP_LENGTH, Integer.BYTES))
                .putInt(rest.length)
                .put(rest)
                .array();
    }

    private static byte[] header(int element, int length) {
        return ByteBuffer.allocate(HEADER_BYTES)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putShort((short) 0)
                .putShort((short) element)
                .putInt(length)
                .array();
    }

    /** @throws InvalidPdu where the bytes are no command set */
    static CommandSet decode(byte[] bytes) throws InvalidPdu {
        ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        CommandSet set = new CommandSet();
        while (in.hasRemaining()) {
            if (in.remaining() < HEADER_BYTES) {
                throw new InvalidPdu("A command set ends in the middle of an element.");
            }
            int group = in.getShort() & 0xffff;
            int element = in.getShort() & 0xffff;
            int length = in.getInt();
            if (group != 0 || length < 0 || length > in.remaining()) {
                throw new InvalidPdu("A command set holds an element that cannot stand there.");
            }
            byte[] value = new byte[length];
            in.get(value);
            set.elements.put(element, value);
        }
        if (set.number(CommandElement.COMMAND_FIELD).isEmpty()) {
            throw new InvalidPdu("A command set says not what it asks for.");
        }
        return set;
    }
}
