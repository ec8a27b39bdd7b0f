package blankwright.job;

import blankwright.flatten.Follower;
import blankwright.flatten.Outcome;
import blankwright.mesh.Finding;
import java.util.List;
import java.util.Optional;

/**
 * One part laid flat.
 *
 * @param aim empty where distortion is spread evenly
 * @param findings of what had to be done besides
 * @param follower of its layout; empty where nobody drags, or there is none to follow
 */
record LaidFlat(Outcome outcome, Optional<WorkAim> aim, List<Finding> findings, Optional<Follower> follower) {
    LaidFlat {
        findings = List.copyOf(findings);
    }
}
