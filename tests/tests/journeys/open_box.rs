//! Opened boxes: described from nothing by taps, measured, explained. What must come out is worked out by hand or told by
//! the trade, as each step says.

use std::sync::atomic::{AtomicUsize, Ordering};

use calc::job::{Job, Units, demo};
use tests::journey::journey;
use tests::page::{Page, Step};

use crate::bath::start_with;

/// A person's taps and typed entries.
#[derive(Default)]
struct Hand {
    taps: AtomicUsize,
    typed: AtomicUsize,
}

impl Hand {
    async fn tap(&self, page: &Page, words: &str) -> Step {
        self.taps.fetch_add(1, Ordering::Relaxed);
        page.click(words).await
    }

    /// A list takes two taps: one opens it, one chooses.
    async fn choose(&self, page: &Page, label: &str, option: &str) -> Step {
        self.taps.fetch_add(2, Ordering::Relaxed);
        page.choose(label, option).await
    }

    async fn enter(&self, page: &Page, label: &str, text: &str) -> Step {
        self.typed.fetch_add(1, Ordering::Relaxed);
        page.type_into(label, text).await
    }

    async fn join(&self, page: &Page, joint: &str, wires: &[&str]) -> Step {
        let grid = page.within("How it is joined");
        self.tap(&grid, joint).await?;
        for wire in wires {
            self.tap(&grid, &format!("{wire}: loose")).await?;
        }
        Ok(())
    }
}

/// The landing of the demonstration job: 16A and 16B hang on one row of the panel, on one leg, and share one white.
async fn describe_landing(page: &Page, hand: &Hand) -> Step {
    hand.tap(page, "Open a box").await?;
    page.see("Start from the box that is most like it").await?;
    for breaker in ["16A · Hall receptacles", "16B · Stair receptacles"] {
        hand.choose(page, "Add a breaker of the panel", breaker)
            .await?;
    }
    hand.tap(page, "Add a cable: black, red, white, bare")
        .await?;
    // The second hot goes onto the breaker that is still free.
    hand.choose(page, "Cable A: where it goes", "breaker 16A")
        .await?;
    for (letter, watts) in [("B", "900"), ("C", "1100")] {
        hand.tap(page, "Add a cable: black, white, bare").await?;
        hand.choose(page, &format!("Cable {letter}: where it goes"), "a load")
            .await?;
        hand.enter(page, &format!("Load on {letter}: takes"), watts)
            .await?;
    }
    hand.join(page, "joint 1", &["black of A", "black of B"])
        .await?;
    hand.join(page, "joint 2", &["red of A", "black of C"])
        .await?;
    hand.join(page, "joint 3", &["white of A", "white of B", "white of C"])
        .await?;
    hand.join(page, "joint 4", &["bare of A", "bare of B", "bare of C"])
        .await
}

#[test]
fn a_shared_white_is_described_by_taps_measured_and_explained() {
    journey(|page| async move {
        let mut job = demo::job("landing", "2026-03-02T08:00:00Z");
        job.opened.clear();
        start_with(&page, &job, "/job/landing/open-box").await?;
        page.see("Open a box here").await?;
        let hand = Hand::default();
        describe_landing(&page, &hand).await?;
        let (taps, typed) = (
            hand.taps.load(Ordering::Relaxed),
            hand.typed.load(Ordering::Relaxed),
        );
        // Under two minutes: 3 seconds for a tap, 6 for a typed figure.
        assert!(3 * taps + 6 * typed < 120, "{taps} taps, {typed} typed");
        // Both feed the box through metal, whatever the directory says.
        page.see("16A feeds it").await?;
        page.see("16B feeds it").await?;
        page.see("Turn off and lock out every breaker").await?;
        page.picture("open-box-off-list").await?;
        // 7.5 A and 9.17 A on one leg: the white of 14 AWG carries their sum, its limit is 15 A (Table 310.16, 60 C).
        page.see("may carry 15 A").await?;
        page.see("too much").await?;
        page.see("Every cable carries as much back as out.").await?;
        page.accessible().await?;
        page.whole_picture("open-box-described").await?;

        // With the hall off the whites still show the whole voltage, and nothing flows in the white to the panel.
        page.click("Add a reading").await?;
        page.choose("Reading 1: at", "joint 3").await?;
        page.within("Reading 1: turned off").click("16A").await?;
        page.type_into("Reading 1: it showed", "120").await?;
        page.click("Add a reading").await?;
        page.within("Reading 2: with")
            .click("clamp, amperes")
            .await?;
        page.choose("Reading 2: around", "white of A").await?;
        page.within("Reading 2: turned off").click("16A").await?;
        page.type_into("Reading 2: it showed", "0").await?;
        page.see("Neutral open").await?;
        page.see("explains 2 of 2 readings").await?;
        page.see("Measure next").await?;
        page.see("If it shows").await?;
        page.see("Putting it right").await?;
        page.accessible().await?;
        page.dark(true).await?;
        page.accessible().await?;
        page.whole_picture("open-box-explained-dark").await?;
        page.dark(false).await?;
        page.whole_picture("open-box-explained").await?;

        // All of it is there again after a reload.
        page.reload().await?;
        page.up().await?;
        page.see("explains 2 of 2 readings").await?;
        assert_eq!(page.value_of("Load on B: takes").await?, "900");
        page.click("All opened boxes").await?;
        page.see("Off before you open it: 16A, 16B").await
    });
}

#[test]
fn a_short_and_a_meter_on_live_parts_are_refused() {
    journey(|page| async move {
        let job = Job::new("shed", "Shed", "2026-03-02T08:00:00Z", Units::FeetInches);
        start_with(&page, &job, "/job/shed/open-box").await?;
        page.click("Open a box").await?;
        page.click("Two hots, one neutral").await?;
        page.see("Breaker 1 feeds it").await?;
        // The hots of two legs in one joint: 120 V on each, 240 V between them.
        let grid = page.within("How it is joined");
        grid.click("joint 1").await?;
        grid.click("red of A: joint 2").await?;
        page.see("a dead short of 240 V").await?;
        page.see_gone("Breaker 1 feeds it").await?;
        page.picture("open-box-short").await?;
        grid.click("joint 2").await?;
        grid.click("red of A: joint 1").await?;
        page.see("Breaker 1 feeds it").await?;
        page.refused("Breaker 1: rating", "0", "Enter more than 0 A.")
            .await?;
        page.see("Breaker Breaker 1: enter its rating.").await?;
        page.type_into("Breaker 1: rating", "15").await?;
        page.click("Add a reading").await?;
        page.within("Reading 1: with").click("ohms").await?;
        page.type_into("Reading 1: it showed", "0.4").await?;
        page.see("A meter in ohms goes on nothing that is not off and proved dead.")
            .await?;
        page.click("Reading 1: everything off and proved dead")
            .await?;
        page.see_gone("A meter in ohms goes on nothing that is not off and proved dead.")
            .await?;
        page.see("explains").await
    });
}

#[test]
fn each_typical_box_shows_what_is_live() {
    journey(|page| async move {
        let job = Job::new(
            "typical",
            "Typical",
            "2026-03-02T08:00:00Z",
            Units::FeetInches,
        );
        start_with(&page, &job, "/job/typical/open-box").await?;
        for typical in [
            "Single light",
            "Switch with neutral",
            "Switch loop",
            "Three-way pair",
            "Split receptacle",
            "Two hots, one neutral",
            "Junction of three cables",
            "Mystery",
        ] {
            page.click("Open a box").await?;
            page.click(typical).await?;
            page.see("What is live").await?;
            page.see("Then prove every wire in it dead.").await?;
            page.accessible().await?;
            page.click("All opened boxes").await?;
            page.see("Opened boxes").await?;
        }
        Ok(())
    });
}

/// What nobody can answer is said to be so, by what stands in the way: an empty box, a cable without wires, a place that is
/// gone, a voltage that nothing explains.
#[test]
fn what_cant_be_answered_is_said_to_be_so() {
    journey(|page| async move {
        let job = Job::new("barn", "Barn", "2026-03-02T08:00:00Z", Units::FeetInches);
        start_with(&page, &job, "/job/barn/open-box").await?;
        page.click("Open a box").await?;
        page.see("Or add breakers and cables one by one below.")
            .await?;
        page.accessible().await?;
        page.click("Junction of three cables").await?;
        page.see("feeds it").await?;
        page.click("Add a cable: black, white, bare").await?;
        for wire in ["bare of D", "white of D", "black of D"] {
            page.click(&format!("Take out {wire}")).await?;
        }
        page.see("Cable D needs 1 to 12 wires. Tap its colors.")
            .await?;
        page.see_gone("feeds it").await?;
        page.accessible().await?;
        page.click("Take out cable D").await?;
        page.see("feeds it").await?;

        // A reading at the end of a cable goes with the cable, and comes back with it.
        page.click("Add a cable: black, white, bare").await?;
        page.click("Add a reading").await?;
        page.choose("Reading 1: at", "black of D").await?;
        page.type_into("Reading 1: it showed", "3").await?;
        page.see("explains 1 of 1 readings").await?;
        page.click("Take out cable D").await?;
        page.see("Cable D: taken out.").await?;
        page.see_gone("explains 1 of 1 readings").await?;
        page.accessible().await?;
        page.click("Put it back").await?;
        page.see("explains 1 of 1 readings").await?;
        // Once something else has changed, it would take that away: there is no way back any more.
        page.click("Take out cable D").await?;
        page.see("Cable D: taken out.").await?;
        page.click("Add a reading").await?;
        page.see_gone("Cable D: taken out.").await?;

        // The meter comes first: a wire that shows a voltage with its breaker off is fed by something else.
        page.choose("Reading 1: at", "joint 1").await?;
        page.type_into("Reading 1: it showed", "118").await?;
        page.see_gone("The meter shows more than you described")
            .await?;
        page.within("Reading 1: turned off")
            .click("Breaker 1")
            .await?;
        page.see("The meter shows more than you described").await?;
        page.see("Reading 1: 118 V where, as described, there is next to none.")
            .await?;
        page.accessible().await?;
        page.within("Reading 1: turned off")
            .click("Breaker 1")
            .await?;
        page.see_gone("The meter shows more than you described")
            .await?;

        // No house has 900 V between a joint and ground.
        page.choose("Reading 1: at", "joint 1").await?;
        page.type_into("Reading 1: it showed", "900").await?;
        page.see("Nothing that is known here explains reading 1.")
            .await?;
        page.accessible().await?;
        page.whole_picture("open-box-impossible").await
    });
}

/// Two boxes that are linked: the advice is for the one that is chosen.
#[test]
fn each_linked_box_has_its_own_next_reading() {
    journey(|page| async move {
        let job = Job::new("stair", "Stair", "2026-03-02T08:00:00Z", Units::FeetInches);
        start_with(&page, &job, "/job/stair/open-box").await?;
        page.click("Open a box").await?;
        page.click("Three-way pair").await?;
        page.click("Add a reading").await?;
        page.type_into("Reading 1: it showed", "58").await?;
        page.see("Measure next").await?;
        page.see("Measure in").await?;
        let first = page
            .script(
                "return document.querySelector('.next-reading').innerText",
                vec![],
            )
            .await?;
        page.within("Measure in").click("Box 2").await?;
        page.until(
            "advice for the other box",
            "return document.querySelector('.next-reading').innerText !== arguments[0]",
            vec![first],
        )
        .await?;
        page.accessible().await?;
        page.picture("open-box-next-in-box-2").await
    });
}
