"""What a person says of a joint: disturbed, what was done about it, released, READY."""

from __future__ import annotations

from rackboard.core.bench import Batch, Hold, HoldReason, Milestone, Parts, Release
from rackboard.core.disturbance import Answer, said_of
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.services.acts import Acts
from rackboard.store.changes import ChangeSet

MOVED_LATE = "moved after its working life"
"""What the journal says of a head set right, or pulled, when it was past its working life."""
LONGEST_REASON = 200


class Holding(Acts):
    """The acts about what a joint may bear."""

    def disturb(self, joint_id: int) -> ChangeSet:
        """Put a joint on HOLD because it was knocked, pulled or turned."""
        now = self._clock.now()
        with self._store.write(text("Act", "disturbed"), now, self.by) as act:
            act.add(Hold(0, joint_id, HoldReason.DISTURBED, "", now, by=self.by))
            act.add_event("disturbed", "joint", joint_id)
        return act.changes

    def end_hold(self, hold: Hold, outcome: str) -> ChangeSet:
        """End a HOLD with what a person has said; "scrapped" ends the joint too."""
        now = self._clock.now()
        label = text("Act", "answer: {outcome}").format(outcome=said_of(outcome))
        with self._store.write(label, now, self.by) as act:
            act.update("hold", hold.id, to_us=now, outcome=outcome, by=self.by)
            if outcome == Answer.SCRAPPED:
                act.update("joint", hold.joint_id, ended_us=now, ended_as="scrapped")
                joint = self._joint(hold.joint_id)
                for stay in self._store.work.stays([joint.club_id], open_only=True):
                    act.update("stay", stay.id, to_us=now)
            act.add_event("hold ended", "joint", hold.joint_id, {"outcome": outcome})
            self._note_person(act)
        return act.changes

    def re_aim(self, joint_id: int, *, after_life: bool = False) -> ChangeSet:
        """Note that a disturbed head was set right before the glue gelled; its clock runs on.

        `after_life` says that the working life was over by then.
        """
        now = self._clock.now()
        kind = MOVED_LATE if after_life else "re-aimed"
        label = text("Act", "moved after its working life") if after_life else text(
            "Act", "re-aimed"
        )
        with self._store.write(label, now, self.by) as act:
            act.add_event(kind, "joint", joint_id, {"outcome": Answer.RE_AIMED.value})
        return act.changes

    def re_glued(
        self, joint_id: int, hold: Hold | None = None, *, after_life: bool = False
    ) -> ChangeSet:
        """End a joint that was pulled and cleaned, and lay its club out with a new batch.

        The new joint waits for its batch to be mixed, so that nobody takes the job for whole;
        clubs of one job re-glued with the same epoxy share a batch until it is mixed. READY
        is taken back. `hold` is the open HOLD that this answers.

        Raises
        ------
        InputError
            If the joint has ended already, or was never glued.
        """
        now = self._clock.now()
        joint = self._joint(joint_id)
        club = self._club(joint.club_id)
        if joint.ended_us is not None or joint.glued_us is None or joint.batch_id is None:
            came = text("Act", "{club}, not glued") if joint.ended_us is None else text(
                "Act", "{club}, taken apart already"
            )
            raise InputError(
                text("Act", "a glued joint"), came.format(club=club.name), text("Act", "re-glued")
            )
        old = self._batch(joint.batch_id)
        label = text("Act", "re-glue {club}").format(club=club.name)
        with self._store.write(label, now, self.by) as act:
            if hold is not None:
                act.update("hold", hold.id, to_us=now, outcome=Answer.RE_GLUED.value, by=self.by)
                act.add_event("hold ended", "joint", joint_id, {"outcome": Answer.RE_GLUED.value})
            act.update("joint", joint_id, ended_us=now, ended_as="re-glued")
            if after_life:
                act.add_event(MOVED_LATE, "joint", joint_id, {"outcome": Answer.RE_GLUED.value})
            batch_id = self._waiting_batch(club.job_id, old.epoxy_id)
            if batch_id is None:
                epoxy = self._store.shop.epoxy(old.epoxy_id)
                number = self._store.work.next_batch_number()
                sheet = old.sheet if epoxy is None else epoxy.sheet
                batch_id = act.add(Batch(0, number, old.epoxy_id, sheet, "", old.zone_id))
            again = joint._replace(id=0, batch_id=batch_id, glued_us=None, parts=Parts.SHOP,
                                   parts_mc=None)  # fmt: skip
            act.add_event("re-glued", "joint", act.add(again), {"was": joint_id})
            self._unready(act, club.job_id)
            self._note_person(act)
        return act.changes

    def release(
        self, joint_id: int, milestone: Milestone, reason: str, hold: Hold | None = None
    ) -> ChangeSet:
        """Let a joint go before the board does: a person's word, with initials and a reason.

        The board's word stays. `hold` is an open HOLD that this answers.

        Raises
        ------
        InputError
            If nobody is named, no reason is given, the joint has ended or isn't glued.
        """
        now = self._clock.now()
        where = text("Act", "release")
        reason = " ".join(reason.split())
        if not self.by:
            raise InputError(
                text("Act", "the initials of who releases it"), text("Act", "nothing"), where
            )
        if not 0 < len(reason) <= LONGEST_REASON:
            wanted = text("Act", "a reason in up to %n letters", "", LONGEST_REASON)
            raise InputError(wanted, reason or text("Act", "nothing"), where)
        joint = self._joint(joint_id)
        club = self._club(joint.club_id)
        if joint.ended_us is not None or joint.glued_us is None:
            raise InputError(text("Act", "a glued joint"), club.name, where)
        label = text("Act", "release {club}").format(club=club.name)
        with self._store.write(label, now, self.by) as act:
            act.add(Release(0, joint_id, milestone, self.by, now, reason))
            act.add_event(
                "released", "joint", joint_id, {"milestone": milestone.value, "reason": reason}
            )
            if hold is not None:
                outcome = Answer.RELEASED.value
                act.update("hold", hold.id, to_us=now, outcome=outcome, by=self.by)
                act.add_event("hold ended", "joint", joint_id, {"outcome": outcome})
            self._note_person(act)
        return act.changes

    def press_ready(self, job_id: int, ready: bool) -> ChangeSet:
        """Say that a job is gripped, bent, tested: READY is a person's word."""
        now = self._clock.now()
        label = text("Act", "READY") if ready else text("Act", "not READY")
        with self._store.write(label, now, self.by) as act:
            act.update("job", job_id, ready_us=now if ready else None,
                       ready_by=self.by if ready else None)  # fmt: skip
            act.add_event("ready" if ready else "not ready", "job", job_id)
            self._note_person(act)
        return act.changes

    def promise(self, job_id: int, promised_us: Instant | None) -> ChangeSet:
        """Set or correct when a job is promised."""
        now = self._clock.now()
        with self._store.write(text("Act", "promise"), now, self.by, correction=True) as act:
            act.update("job", job_id, promised_us=promised_us)
        return act.changes

    def _waiting_batch(self, job_id: int, epoxy_id: int) -> int | None:
        """Return a job's batch of an epoxy that is laid out and not mixed yet."""
        clubs = self._store.work.clubs([job_id])
        joints = self._store.work.joints(club_ids=[club.id for club in clubs])
        batches = self._store.work.batches(
            {j.batch_id for j in joints if j.batch_id is not None and j.ended_us is None}
        )
        unmixed = (b.id for b in batches if b.mixed_us is None and b.epoxy_id == epoxy_id)
        return next(unmixed, None)
