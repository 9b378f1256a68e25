// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.archive.StoredRevision.State;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * A revision among the others of its case: what it is now, and what came before and after it.
 *
 * @param state draft, signed, amended (it replaces an earlier one), withdrawn; withdrawal for the note itself
 * @param current the newest signed revision of a record that is not withdrawn
 * @param draft UID of the draft that was signed, where there was one
 * @param predecessor UID of the report that it replaces, or withdraws
 * @param successor UID of the report that came in its place
 * @param withdrawal the rejection note's revision
 */
public record Standing(
        StoredRevision revision,
        String state,
        boolean current,
        Optional<String> draft,
        Optional<String> predecessor,
        Optional<String> successor,
        Optional<StoredRevision> withdrawal) {
    /** Words for the states of a record, in the order of its life. */
    public static final List<String> STATES = List.of("draft", "signed", "amended", "withdrawn");

    private static final int TAG_BYTES = 16;

    /**
     * Where a revision stands.
     *
     * @param chain all revisions of the case, oldest first
     */
    public static Standing of(StoredRevision revision, List<StoredRevision> chain) {
        Optional<StoredRevision> withdrawal =
                chain.stream().filter(each -> each.state() == State.WITHDRAWN).findFirst();
        Optional<StoredRevision> newest = newestSigned(chain);
        boolean signed = revision.state() == State.SIGNED;
        return new Standing(
                revision,
                state(revision, withdrawal.isPresent()),
                signed && withdrawal.isEmpty() && newest.equals(Optional.of(revision)),
                signed ? draft(revision, chain) : Optional.empty(),
                revision.change().map(StoredRevision.Change::predecessor),
                successor(revision, chain),
                signed ? withdrawal : Optional.empty());
    }

    /** The signed revision that no other one replaces. */
    static Optional<StoredRevision> newestSigned(List<StoredRevision> chain) {
        return chain.stream().filter(each -> each.state() == State.SIGNED).reduce((first, second) -> second);
    }

    private static String state(StoredRevision revision, boolean withdrawn) {
        return switch (revision.state()) {
            case DRAFT -> "draft";
            case WITHDRAWN -> "withdrawal";
            case SIGNED -> withdrawn ? "withdrawn" : revision.change().isPresent() ? "amended" : "signed";
        };
    }

    private static Optional<String> draft(StoredRevision revision, List<StoredRevision> chain) {
        return chain.stream()
                .filter(each -> each.revision() == revision.revision() - 1 && each.state() == State.DRAFT)
                .map(StoredRevision::reportUid)
                .findFirst();
    }

    private static Optional<String> successor(StoredRevision revision, List<StoredRevision> chain) {
        return chain.stream()
                .filter(each -> each.revision() > revision.revision()
                        && revision.state() != State.WITHDRAWN
                        && each.state() != State.WITHDRAWN)
                .map(StoredRevision::reportUid)
                .findFirst();
    }

    /** Entity tag: changes with everything that happens to the record. Source: RFC 9110, 8.8.3, strong. */
    public String tag() {
        String said = revision.reportUid() + "|" + state + "|" + successor.orElse("") + "|"
                + withdrawal.map(StoredRevision::reportUid).orElse("");
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(said.getBytes(StandardCharsets.UTF_8));
            return "\"" + HexFormat.of().formatHex(digest, 0, TAG_BYTES) + "\"";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256.", e);
        }
    }
}
