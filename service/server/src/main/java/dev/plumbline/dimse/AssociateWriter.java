// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dicom.Implementation;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A-ASSOCIATE-RQ and -AC as bytes. Source: DICOM PS3.8, 9.3.2 and 9.3.3; PS3.7, D.3.3. */
final class AssociateWriter {
    static final int PROTOCOL_VERSION = 1;
    private static final int TITLE_BYTES = 16;
    private static final int RESERVED_BYTES = 32;

    private AssociateWriter() {}

    static byte[] request(Proposal proposal) {
        ByteArrayOutputStream body = start(proposal.titles(), proposal.applicationContext());
        for (Proposal.Context context : proposal.contexts()) {
            ByteArrayOutputStream item = new ByteArrayOutputStream();
            item.writeBytes(new byte[] {(byte) context.id(), 0, 0, 0});
            put(item, AssociateItem.ABSTRACT_SYNTAX, ascii(context.abstractSyntax()));
            context.transferSyntaxes().forEach(uid -> put(item, AssociateItem.TRANSFER_SYNTAX, ascii(uid)));
            put(body, AssociateItem.CONTEXT_RQ, item.toByteArray());
        }
        put(body, AssociateItem.USER_INFORMATION, user(proposal.maxPduBytes(), proposal.roles()));
        return pdu(PduType.ASSOCIATE_RQ, body.toByteArray());
    }

    static byte[] accept(Agreement agreement) {
        ByteArrayOutputStream body = start(agreement.titles(), Proposal.DICOM_APPLICATION_CONTEXT);
        for (Agreement.Answer answer : agreement.answers()) {
            ByteArrayOutputStream item = new ByteArrayOutputStream();
            item.writeBytes(
                    new byte[] {(byte) answer.id(), 0, (byte) answer.result().code(), 0});
            put(item, AssociateItem.TRANSFER_SYNTAX, ascii(answer.transferSyntax()));
            put(body, AssociateItem.CONTEXT_AC, item.toByteArray());
        }
        put(body, AssociateItem.USER_INFORMATION, user(agreement.maxPduBytes(), agreement.roles()));
        return pdu(PduType.ASSOCIATE_AC, body.toByteArray());
    }

    static byte[] reject(Rejection why) {
        return pdu(PduType.ASSOCIATE_RJ, new byte[] {0, (byte) why.result(), (byte) why.source(), (byte) why.reason()});
    }

    static byte[] release(int type) {
        return pdu(type, new byte[4]);
    }

    static byte[] abort(Pdu.Abort abort) {
        return pdu(PduType.ABORT, new byte[] {0, 0, (byte) abort.source(), (byte) abort.reason()});
    }

    private static ByteArrayOutputStream start(Proposal.AeTitles titles, String applicationContext) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        body.writeBytes(new byte[] {0, PROTOCOL_VERSION, 0, 0});
        body.writeBytes(title(titles.called()));
        body.writeBytes(title(titles.calling()));
        body.writeBytes(new byte[RESERVED_BYTES]);
        put(body, AssociateItem.APPLICATION_CONTEXT, ascii(applicationContext));
        return body;
    }

    private static byte[] title(String aeTitle) {
        return ascii((aeTitle + " ".repeat(TITLE_BYTES)).substring(0, TITLE_BYTES));
    }

    private static byte[] user(int maxPduBytes, List<Proposal.RoleSelection> roles) {
        ByteArrayOutputStream items = new ByteArrayOutputStream();
        put(
                items,
                AssociateItem.MAXIMUM_LENGTH,
                ByteBuffer.allocate(Integer.BYTES).putInt(maxPduBytes).array());
        put(items, AssociateItem.IMPLEMENTATION_CLASS_UID, ascii(Implementation.CLASS_UID));
        for (Proposal.RoleSelection role : roles) {
            byte[] uid = ascii(role.sopClass());
            ByteBuffer item = ByteBuffer.allocate(uid.length + 4).putShort((short) uid.length);
            item.put(uid).put((byte) (role.user() ? 1 : 0)).put((byte) (role.provider() ? 1 : 0));
            put(items, AssociateItem.ROLE_SELECTION, item.array());
        }
        put(items, AssociateItem.IMPLEMENTATION_VERSION_NAME, ascii(Implementation.VERSION_NAME));
        return items.toByteArray();
    }

    private static void put(ByteArrayOutputStream out, int type, byte[] content) {
        out.writeBytes(ByteBuffer.allocate(AssociateItem.HEADER_BYTES)
                .put((byte) type)
                .put((byte) 0)
                .putShort((short) content.length)
                .array());
        out.writeBytes(content);
    }

    static byte[] pdu(int type, byte[] body) {
        return ByteBuffer.allocate(PduType.HEADER_BYTES + body.length)
                .put((byte) type)
                .put((byte) 0)
                .putInt(body.length)
                .put(body)
                .array();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}
