// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Services;
import dev.plumbline.dimse.Status;
import java.io.InputStream;

/** Takes nothing, for tests of who is let in. */
final class DeafServices implements Services {
    @Override
    public Reply store(Incoming object, InputStream file) {
        return Reply.of(Status.OUT_OF_RESOURCES, "");
    }

    @Override
    public Reply commitment(CommitmentReport report) {
        return Reply.of(Status.OUT_OF_RESOURCES, "");
    }
}
