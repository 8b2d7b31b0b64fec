//! The wiring's quick sums, typed as a person types them. Figures come from the code's tables and from the worked
//! examples of calc/tests/wiring/, never from the screen.

use calc::job::{Job, Units};
use tests::journey::journey;
use tests::page::{Page, Step};

use crate::bath::start_with;

async fn open(page: &Page, path: &str) -> Step {
    page.open(path).await?;
    page.up().await
}

/// Adds a cable with ground to the box, as the next one.
async fn cable(page: &Page, number: usize, size: &str, wires: &str) -> Step {
    page.click("Add a cable").await?;
    page.choose(&format!("Cable {number}: wire size"), size)
        .await?;
    page.type_into(&format!("Cable {number}: insulated wires"), wires)
        .await
}

#[test]
fn a_three_gang_box_is_filled_to_its_limit_and_over() {
    journey(|page| async move {
        open(&page, "/sums").await?;
        page.click("Box fillWhat is in a box, counted line by line, and what else fits.")
            .await?;
        // NFPA 70-2023 Table 314.16(A): a 3 x 2 x 3-1/2 device box has 18.0 in3, three of them ganged 54.
        page.choose("Metal box", "Device 3 x 2 x 3-1/2 · 18 in³")
            .await?;
        page.type_into("Gangs side by side", "3").await?;
        page.see("Room left").await?;
        // 314.16(B), at 2.25 in3 for 12 AWG: 12 wires of four cables, four passing, clamps 1, three devices 6, up to
        // four grounds 1: 24 allowances are 54.0 in3, and exactly full passes.
        for number in 1..=4 {
            cable(&page, number, "12 AWG", "3").await?;
        }
        for number in 1..=3 {
            page.click("Add a device").await?;
            page.choose(&format!("Device {number}: largest wire on it"), "12 AWG")
                .await?;
        }
        page.within("Clamps inside the box").click("Yes").await?;
        page.click("Add other wires").await?;
        page.choose("Wires 1: what they do", "pass through, unbroken")
            .await?;
        page.choose("Wires 1: size", "12 AWG").await?;
        page.type_into("Wires 1: how many", "4").await?;
        page.see("Full to the mark").await?;
        page.see("54 in³ needed, 54 in³ there.").await?;
        page.see_row(
            "Wires that end or are spliced, 12 AWG × 12",
            &["1", "12", "27"],
        )
        .await?;
        page.see_row("Grounds, 12 AWG × 4", &["7", "1", "2.25"])
            .await?;
        page.open_all().await?;
        page.see("Table 314.16(A)").await?;
        page.see("one that is two gangs wide, four times").await?;
        page.accessible().await?;
        page.picture("wiring-box-full").await?;

        // A fifth cable: three wires, and a quarter for the fifth ground: 3.25 x 2.25 = 7.3125 in3 too much.
        cable(&page, 5, "12 AWG", "3").await?;
        page.see("Over by").await?;
        page.see("61.313 in³ needed").await?;
        // By the 2017 edition all grounds count once: 3 x 2.25 = 6.75.
        page.click("2017").await?;
        page.see("60.75 in³ needed").await?;
        page.see("by 6.75 in³").await?;
        page.picture("wiring-box-over").await?;

        // All of it is there again after a reload.
        page.reload().await?;
        page.up().await?;
        page.see("60.75 in³ needed").await?;
        assert_eq!(page.value_of("Cable 5: insulated wires").await?, "3");
        page.refused("Gangs side by side", "0", "Enter 1 or more.")
            .await?;
        page.refused(
            "Gangs side by side",
            "2.5",
            "2.5 isn't whole. Enter a whole number.",
        )
        .await?;
        page.see("Enter what is missing above").await
    });
}

#[test]
fn a_marked_box_that_is_exactly_full_fits() {
    journey(|page| async move {
        open(&page, "/sums/box").await?;
        // Worked example V-BF-02 (18.00, published): two 12-2 with ground through clamps, one receptacle, in 18.0 in3.
        page.click("the mark on it").await?;
        page.type_into("Volume marked on it", "18.0").await?;
        cable(&page, 1, "12 AWG", "2").await?;
        page.click("One more like it").await?;
        page.click("Add a device").await?;
        page.within("Clamps inside the box").click("Yes").await?;
        page.see("Full to the mark").await?;
        page.see("18 in³ needed, 18 in³ there.").await?;
        page.refused(
            "Volume marked on it",
            "eighteen",
            "“eighteen” isn't understood here. Enter a volume, like 0.45 cu ft or 12.7 L.",
        )
        .await?;
        page.refused("Volume marked on it", "0", "Enter more than 0 in³.")
            .await
    });
}

#[test]
fn an_attic_takes_amps_away() {
    journey(|page| async move {
        open(&page, "/sums/ampacity").await?;
        let air = "Air around the cable";
        page.choose("Wire size", "12 AWG").await?;
        page.click("60 °C").await?;
        page.click("several receptacles").await?;
        // Worked example V-AM-04: 12-2 NM at 122 F: 30 x 0.82 = 24.6 A, held to 20 A; breaker 20 A.
        page.type_into(air, "122").await?;
        page.see("24.6 A").await?;
        page.see("The terminals govern").await?;
        page.see("20 A").await?;
        // NFPA 70-2023 Table 310.15(B)(1)(1): 0.76 for 90 C conductors from 123 to 131 F, or to 55 C; 310.15(C)(1): 0.8
        // for 4 to 6. 30 x 0.76 x 0.8 = 18.24 A, and receptacles take the breaker below: 15 A.
        page.type_into(air, "130").await?;
        page.see("22.8 A").await?;
        page.choose("They lie", "touching or bundled").await?;
        page.type_into("For a length of", "8'").await?;
        page.click("Add cables beside it").await?;
        page.type_into("Cables 1: how many", "2").await?;
        page.see("18.24").await?;
        page.see("Factor for 6 conductors").await?;
        page.see("15 A").await?;
        page.see("hot air and conductors together").await?;
        page.open_all().await?;
        page.see("Source: NFPA 70-2023 Table 310.15(C)(1)").await?;
        page.accessible().await?;
        page.picture("wiring-attic").await?;
        page.type_into(air, "54 C").await?;
        page.see("18.24").await?;
        // 24 in and less are not adjusted.
        page.type_into("For a length of", "24").await?;
        page.see("22.8 A").await?;
        page.open_all().await?;
        page.see("Each cable counts for itself: together for 24 in or less.")
            .await?;

        page.refused(air, "200", "Enter 185 °F (85 °C) or less.")
            .await?;
        page.refused(
            air,
            "hot",
            "“hot” isn't understood here. Enter a temperature, like 86 °F or 30 °C.",
        )
        .await
    });
}

#[test]
fn a_load_finds_its_smallest_wire() {
    journey(|page| async move {
        open(&page, "/sums/ampacity").await?;
        page.click("the smallest wire for a load").await?;
        page.click("something else").await?;
        page.click("60 °C").await?;
        // Worked example V-BL-02: 18.75 A continuous wants 125 %, 23.4375 A, and a breaker of 25 A. By NFPA 70-2023
        // Table 310.16 at 60 C and 240.4(D), 12 AWG stops at 20 A; 10 AWG has 30 A.
        page.type_into("On for 3 hours or more", "18.75").await?;
        page.see("Smallest wire").await?;
        page.see("10 AWG").await?;
        page.see("23.44 A").await?;
        page.see("25 A").await?;
        page.see("12 AWG is too small: before derating 20 A, 23.44 A needed.")
            .await?;
        page.accessible().await?;
        page.picture("wiring-smallest").await?;
        page.refused(
            "On for 3 hours or more",
            "plenty",
            "“plenty” isn't understood here. Enter a number, like 12 or 12.5 A.",
        )
        .await
    });
}

#[test]
fn a_run_loses_volts_and_finds_its_length_and_its_wire() {
    journey(|page| async move {
        open(&page, "/sums/drop").await?;
        // Worked example V-VD-02: 16 A over 75 ft of 12 AWG solid copper at 120 V: 4.632 V, 3.86 %.
        page.choose("Wire size", "12 AWG").await?;
        page.type_into("Stretch 1, one way", "75").await?;
        page.type_into("Load 1", "16").await?;
        page.see("4.63").await?;
        page.see("3.86 % of the nominal voltage.").await?;
        page.see("more than the 3 % recommended").await?;
        page.see_row("75 ft", &["115.37", "4.63", "3.86"]).await?;
        page.open_all().await?;
        page.see("Source: NFPA 70-2023 Chapter 9 Table 8").await?;
        page.accessible().await?;
        page.picture("wiring-drop").await?;

        // Worked example V-VD-12: 15 A and 5 A on a shared neutral, 80 ft: 10 A return, 3.86 V lost on one leg and
        // 0.772 V gained on the other.
        page.choose("Supply", "two hots and a shared neutral")
            .await?;
        page.type_into("Stretch 1, one way", "80").await?;
        page.type_into("Load 1", "15").await?;
        page.click("Add a load").await?;
        page.type_into("Load 2", "5").await?;
        page.choose("Load 2 is on", "leg B").await?;
        page.see_row("80 ft", &["116.14", "120.77", "10"]).await?;
        page.see("lifts the lighter leg by 0.77 V").await?;
        page.picture("wiring-drop-shared").await?;

        // Worked example V-VD-09: 16 A on 12 AWG, 3 %: 58.29 ft, which is never rounded up.
        page.choose("Supply", "two wires, single phase").await?;
        page.within("The loads").click("Take out load 2").await?;
        page.type_into("Load 1", "16").await?;
        page.click("the longest run").await?;
        page.see("58.2").await?;
        page.see("It loses 3.6 V at the far end").await?;

        // Worked example V-VD-10: 20 A over 100 ft, stranded, 3 %: 8 AWG with 3.112 V, 2.593 %.
        page.click("the smallest wire").await?;
        page.type_into("Stretch 1, one way", "100").await?;
        page.type_into("Load 1", "20").await?;
        page.choose("Wire is", "stranded").await?;
        page.see("It loses 3.11 V, 2.59 %.").await?;
        page.see("0.9 Ω").await?;
        page.accessible().await?;

        page.refused("May lose no more than", "0", "Enter more than 0.")
            .await?;
        page.refused(
            "Stretch 1, one way",
            "far",
            "“far” isn't understood here. Enter a length, like 7' 3 5/8\" or 2226 mm.",
        )
        .await
    });
}

#[test]
fn a_meter_says_what_the_run_has() {
    journey(|page| async move {
        open(&page, "/sums/measured").await?;
        // 1.3 V lost at 8 A: 0.1625 ohm. 14 AWG has 3.07 ohm in 1000 ft (Chapter 9 Table 8), so 10 ft of run, there and
        // back, should have 0.0614: by hand 0.1011 too much, and 6.47 W in one joint.
        page.type_into("At the load, load off", "121").await?;
        page.type_into("At the load, load on", "119.7").await?;
        page.type_into("Load current", "8").await?;
        page.see("0.16").await?;
        page.type_into("Length, one way", "10").await?;
        page.choose("Wire size", "14 AWG").await?;
        page.see("0.101 Ω more than the wire explains").await?;
        page.see("6.5 W of heat").await?;
        page.accessible().await?;
        page.picture("wiring-measured").await?;
        // No wire makes the voltage rise.
        page.type_into("At the load, load on", "124").await?;
        page.see("The voltage rises by 3 V").await?;
        page.see("call the utility or an electrician now").await?;
        page.refused("Load current", "0", "Enter more than 0 A.")
            .await
    });
}

#[test]
fn a_run_of_cable_is_bought_cut_and_stapled() {
    journey(|page| async move {
        open(&page, "/sums/cable").await?;
        // By hand: up 8, across 20, down 4 ft is 32; with 10 % 35.2; 8 in at both ends: 36.53 ft, never rounded down.
        // Staples: 384 in less 12 at each end is 360, at most 54 apart: 7 spaces, 8 staples (334.30).
        for (number, way, length) in [(1, "up", "8"), (2, "across", "20"), (3, "down", "4")] {
            page.click("Add a part of the way").await?;
            let part = format!("Piece 1, part {number}");
            page.within(&format!("{part}: way")).click(way).await?;
            page.type_into(&format!("{part}: length"), length).await?;
            page.type_into(&format!("{part}: to the edge of the wood"), "1 1/2")
                .await?;
        }
        page.see("36.6").await?;
        page.see("1 piece out of 1 roll, 8 staples.").await?;
        page.see_row("1", &["32 ft", "36.5 ft", "8"]).await?;
        // 300.4: a hole or cable nearer than 1-1/4 in to the edge wants a plate.
        page.type_into("Piece 1, part 2: to the edge of the wood", "1")
            .await?;
        page.see("Piece 1, part 2: the cable is 1\" from the edge.")
            .await?;
        // 404.2(C): between two three-ways fed at the first, the neutral goes along: three-wire.
        page.see("3-wire: neutral, two travelers").await?;
        page.open_all().await?;
        page.see("Source: NFPA 70-2023 300.14").await?;
        page.accessible().await?;
        page.picture("wiring-cable").await?;
        page.refused("Cable on a roll", "0", "Enter more than 0\".")
            .await?;
        page.refused(
            "Piece 1, part 1: length",
            "up",
            "“up” isn't understood here. Enter a length, like 7' 3 5/8\" or 2226 mm.",
        )
        .await
    });
}

#[test]
fn sums_are_kept_into_a_job() {
    journey(|page| async move {
        let job = Job::new(
            "row-9",
            "Row house",
            "2026-03-02T08:00:00Z",
            Units::FeetInches,
        );
        start_with(&page, &job, "/sums/box").await?;
        page.click("the mark on it").await?;
        page.type_into("Volume marked on it", "18.0").await?;
        cable(&page, 1, "12 AWG", "2").await?;
        page.choose("Into", "Row house").await?;
        page.type_into("Which box", "Switch by the stair").await?;
        page.click("Keep").await?;
        page.see("Kept as “Switch by the stair” in “Row house”.")
            .await?;
        page.accessible().await?;
        page.whole_picture("wiring-kept").await?;
        page.click("Open it there").await?;
        // 314.16(B): two wires of 12 AWG and their ground, 3 x 2.25 in3.
        page.see("6.75 in³ needed, 18 in³ there.").await?;
        assert_eq!(page.value_of("Which box").await?, "Switch by the stair");

        // The wire goes to a new circuit of its own.
        open(&page, "/sums/ampacity").await?;
        page.choose("Wire size", "12 AWG").await?;
        page.type_into("Air around the cable", "122").await?;
        page.choose("Into", "Row house").await?;
        page.type_into("What you call it", "Attic lights").await?;
        page.click("Keep").await?;
        page.see("Kept as “Attic lights” in “Row house”.").await?;
        page.click("Open it there").await?;
        page.see("Attic lights").await?;
        assert_eq!(page.value_of("Air around the cable").await?, "122");

        // A run goes to that circuit, and is taken back from it.
        open(&page, "/sums/drop").await?;
        page.choose("Wire size", "10 AWG").await?;
        page.type_into("Stretch 1, one way", "75").await?;
        page.type_into("Load 1", "16").await?;
        page.choose("Into", "Row house").await?;
        page.choose("Circuit", "Attic lights").await?;
        page.click("Keep").await?;
        page.see("Kept as “Attic lights” in “Row house”.").await?;
        let kept = page.kept("roomwright.job.row-9").await?.unwrap_or_default();
        assert!(kept.contains("\"75\""), "{kept}");
        page.click("Undo").await?;
        page.see("Taken back. The job is as it was.").await?;
        let kept = page.kept("roomwright.job.row-9").await?.unwrap_or_default();
        assert!(!kept.contains("\"75\""), "{kept}");
        // Three phases have no place in a circuit of a house.
        page.choose("Supply", "three phase").await?;
        page.click("Keep").await?;
        page.see("No circuit of a job has three phases").await?;

        // The way of a cable: up 8 and across 12 are a run of 20 ft.
        open(&page, "/sums/cable").await?;
        for (number, way, length) in [(1, "up", "8"), (2, "across", "12")] {
            page.click("Add a part of the way").await?;
            let part = format!("Piece 1, part {number}");
            page.within(&format!("{part}: way")).click(way).await?;
            page.type_into(&format!("{part}: length"), length).await?;
        }
        page.choose("Into", "Row house").await?;
        page.choose("Circuit", "Attic lights").await?;
        page.click("Keep").await?;
        page.click("Open it there").await?;
        page.see("Attic lights").await?;
        assert_eq!(page.value_of("Stretch 1, one way").await?, "20");

        // Into a job of its own, which goes again.
        open(&page, "/sums/ampacity").await?;
        page.click("Keep").await?;
        page.see("Open it there").await?;
        page.click("Undo").await?;
        page.see("Taken back. The job is as it was.").await?;
        open(&page, "/").await?;
        page.see("Row house").await?;
        assert_eq!(page.text().await?.matches("Job without a name").count(), 0);
        Ok(())
    });
}

/// NFPA 70-2023 Table 310.16 has no aluminum below 12 AWG, and Chapter 9 Table 8 none either.
#[test]
fn wiring_that_is_not_made_is_refused_at_its_size() {
    journey(|page| async move {
        open(&page, "/sums/ampacity").await?;
        page.choose("Wire size", "14 AWG").await?;
        page.choose("Metal", "aluminum").await?;
        page.see("14 AWG aluminum is too small for a circuit.")
            .await?;
        let said = page.refusal_at("Wire size").await?;
        assert!(said.contains("Take 12 AWG or larger"), "{said}");
        page.accessible().await?;
        page.choose("Metal", "copper").await?;
        page.see_gone("14 AWG aluminum is too small").await?;
        // 60 C insulation has no factor past 131 F (Table 310.15(B)(1)(1)).
        page.choose("Cable or insulation", "TW (60 °C)").await?;
        page.type_into("Air around the cable", "140").await?;
        page.press(thirtyfour::Key::Tab).await?;
        page.see("Take insulation rated higher").await?;
        let said = page.refusal_at("Air around the cable").await?;
        assert!(said.contains("Take insulation rated higher"), "{said}");

        // No run is shorter than nothing, nor as long as a county.
        open(&page, "/sums/drop").await?;
        for length in ["-5", "99999999"] {
            page.type_into("Stretch 1, one way", length).await?;
            page.press(thirtyfour::Key::Tab).await?;
            let said = page.refusal_at("Stretch 1, one way").await?;
            assert!(said.contains("Enter "), "{length}: {said}");
        }
        Ok(())
    });
}
