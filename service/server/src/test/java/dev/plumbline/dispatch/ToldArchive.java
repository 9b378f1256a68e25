// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.HeldObject;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** An archive that does with each object as the test says, and remembers what it was asked. */
final class ToldArchive implements Carrier {
    static final Outcome TAKEN = Outcome.of(Verdict.SENT, "0000", "success");
    static final Proof THERE = Proof.of(Proof.Finding.PROVED, "Read back and equal.");

    final List<HeldObject> sent = new ArrayList<>();
    final List<Question> questions = new ArrayList<>();
    Function<HeldObject, Outcome> sending = object -> TAKEN;
    Function<Question, Proof> proving = question -> THERE;

    Destination destination() {
        return new Destination(FiledRecords.TO, true, () -> this);
    }

    Courier courier(FiledRecords records) {
        return new Courier(destination(), records.archive, records.times());
    }

    List<String> studies() {
        return sent.stream().map(each -> each.identity().studyInstanceUid()).toList();
    }

    @Override
    public Outcome send(HeldObject object) {
        sent.add(object);
        return sending.apply(object);
    }

    @Override
    public Proof prove(Question question) {
        questions.add(question);
        return proving.apply(question);
    }

    @Override
    public void rest() {
        // holds nothing
    }
}
