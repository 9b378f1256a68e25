// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Agreement.Answer;
import dev.plumbline.dimse.Agreement.Result;
import dev.plumbline.dimse.Proposal.AeTitles;
import dev.plumbline.dimse.Proposal.RoleSelection;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the bodies of A-ASSOCIATE-RQ and -AC. Unknown items are stepped over, as the standard demands; lengths that do
 * not fit are an invalid PDU. Source: DICOM PS3.8, 9.3.2 and 9.3.3; PS3.7, D.3.3.
 */
final class AssociateReader {
    private static final int TITLE_BYTES = 16;
    private static final int RESERVED_BYTES = 32;
    private static final int FIXED_BYTES = 4 + 2 * TITLE_BYTES + RESERVED_BYTES;

    private String applicationContext = "";
    private final List<Proposal.Context> contexts = new ArrayList<>();
    private final List<Answer> answers = new ArrayList<>();
    private int maxPduBytes;
    private final List<RoleSelection> roles = new ArrayList<>();

    private AssociateReader() {}

    /** Whether the peer speaks the only version of the protocol; looked at before anything else. */
    static boolean speaksVersionOne(byte[] body) {
        return body.length >= 2 && (body[1] & AssociateWriter.PROTOCOL_VERSION) != 0;
    }

    static Proposal request(byte[] body) throws InvalidPdu {
        AssociateReader reader = new AssociateReader();
        AeTitles titles = reader.read(body);
        if (reader.contexts.isEmpty()) {
            throw new InvalidPdu("The association request proposes no presentation context.");
        }
        return new Proposal(titles, reader.applicationContext, reader.contexts, reader.maxPduBytes, reader.roles);
    }

    static Agreement accept(byte[] body) throws InvalidPdu {
        AssociateReader reader = new AssociateReader();
        AeTitles titles = reader.read(body);
        return new Agreement(titles, reader.answers, reader.maxPduBytes, reader.roles);
    }

    private AeTitles read(byte[] body) throws InvalidPdu {
        if (body.length < FIXED_BYTES) {
            throw new InvalidPdu("The association PDU ends before its items.");
        }
        ByteBuffer in = ByteBuffer.wrap(body);
        in.position(4);
        AeTitles titles = new AeTitles(text(in, TITLE_BYTES), text(in, TITLE_BYTES));
        in.position(FIXED_BYTES);
        while (in.hasRemaining()) {
            int type = type(in);
            item(type, content(in));
        }
        return titles;
    }

    private void item(int type, ByteBuffer content) throws InvalidPdu {
        switch (type) {
            case AssociateItem.APPLICATION_CONTEXT -> applicationContext = text(content, content.remaining());
            case AssociateItem.CONTEXT_RQ -> contexts.add(proposed(content));
            case AssociateItem.CONTEXT_AC -> answers.add(answered(content));
            case AssociateItem.USER_INFORMATION -> user(content);
            default -> {} // PS3.8, 9.3.1: items that are not known are ignored
        }
    }

    private static Proposal.Context proposed(ByteBuffer in) throws InvalidPdu {
        int id = u8(in);
        skip(in, 3);
        String abstractSyntax = "";
        List<String> transferSyntaxes = new ArrayList<>();
        while (in.hasRemaining()) {
            int type = type(in);
            ByteBuffer content = content(in);
            if (type == AssociateItem.ABSTRACT_SYNTAX) {
                abstractSyntax = text(content, content.remaining());
            } else if (type == AssociateItem.TRANSFER_SYNTAX) {
                transferSyntaxes.add(text(content, content.remaining()));
            }
        }
        if (id % 2 == 0) {
            throw new InvalidPdu("A presentation context has an even number.");
        }
        return new Proposal.Context(id, abstractSyntax, transferSyntaxes);
    }

    private static Answer answered(ByteBuffer in) throws InvalidPdu {
        int id = u8(in);
        skip(in, 1);
        Result result = Result.of(u8(in))
                .orElseThrow(() -> new InvalidPdu("A presentation context is answered with an unknown result."));
        skip(in, 1);
        String transferSyntax = "";
        while (in.hasRemaining()) {
            int type = type(in);
            ByteBuffer content = content(in);
            if (type == AssociateItem.TRANSFER_SYNTAX) {
                transferSyntax = text(content, content.remaining());
            }
        }
        return new Answer(id, result, transferSyntax);
    }

    private void user(ByteBuffer in) throws InvalidPdu {
        while (in.hasRemaining()) {
            int type = type(in);
            ByteBuffer content = content(in);
            if (type == AssociateItem.MAXIMUM_LENGTH) {
                need(content, Integer.BYTES);
                maxPduBytes = content.getInt();
            } else if (type == AssociateItem.ROLE_SELECTION) {
                int length = u16(content);
                String sopClass = text(content, length);
                roles.add(new RoleSelection(sopClass, u8(content) == 1, u8(content) == 1));
            }
        }
        if (maxPduBytes < 0) {
            maxPduBytes = 0; // beyond 2 GiB is as good as no bound
        }
    }

    private static int type(ByteBuffer in) throws InvalidPdu {
        int type = u8(in);
        skip(in, 1);
        return type;
    }

    private static ByteBuffer content(ByteBuffer in) throws InvalidPdu {
        int length = u16(in);
        need(in, length);
        ByteBuffer content = in.slice(in.position(), length);
        in.position(in.position() + length);
        return content;
    }

    private static String text(ByteBuffer in, int length) throws InvalidPdu {
        need(in, length);
        byte[] bytes = new byte[length];
        in.get(bytes);
        return new String(bytes, StandardCharsets.ISO_8859_1).replace("\0", "").strip();
    }

    private static int u8(ByteBuffer in) throws InvalidPdu {
        need(in, 1);
        return in.get() & 0xff;
    }

    private static int u16(ByteBuffer in) throws InvalidPdu {
        need(in, Short.BYTES);
        return in.getShort() & 0xffff;
    }

    private static void skip(ByteBuffer in, int bytes) throws InvalidPdu {
        need(in, bytes);
        in.position(in.position() + bytes);
    }

    private static void need(ByteBuffer in, int bytes) throws InvalidPdu {
        if (in.remaining() < bytes) {
            throw new InvalidPdu("An item of the association PDU is longer than what encloses it.");
        }
    }
}
