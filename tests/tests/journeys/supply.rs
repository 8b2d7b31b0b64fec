//! Buying, checking a quote, and the job sheet. Figures are worked out by hand, as each step says, never from the screen;
//! prices are invented.

use std::fs;
use std::path::Path;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use calc::job::questions::supply::needs_of;
use calc::job::{Job, OwnLineEntry, Typed, demo, file};
use calc::supply::need::Kind;
use serde_json::json;
use tests::journey::journey;
use tests::page::{Page, Step};

use crate::bath::start_with;

/// The demonstration job with a name for its room.
fn job(id: &str) -> Job {
    let mut job = demo::job(id, "2026-03-02T08:00:00Z");
    job.name = "Row house".to_owned();
    job.rooms[0].name = "Back bedroom".to_owned();
    job
}

/// Bags of the job's pour: its volume with its allowance over the yield, rounded up.
fn bags(job: &Job) -> u32 {
    let needs = needs_of(job);
    let pour = needs.iter().find(|need| need.kind == Kind::Pour).unwrap();
    (pour.exact * 1.1 / 0.45).ceil() as u32
}

/// The page as it is printed on paper of that size, inches; kept beside the pictures.
async fn printed_on(page: &Page, name: &str, wide: f64, tall: f64) -> Step<Vec<u8>> {
    let paper = json!({"printBackground": false, "paperWidth": wide, "paperHeight": tall});
    let printed = page.command("Page.printToPDF", paper).await?;
    let pdf = STANDARD.decode(printed["data"].as_str().ok_or("no PDF")?)?;
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("screenshots");
    fs::create_dir_all(&folder)?;
    fs::write(folder.join(format!("sheet-{name}.pdf")), &pdf)?;
    Ok(pdf)
}

async fn kept(page: &Page, id: &str) -> Step<Job> {
    let text = page.kept(&format!("roomwright.job.{id}")).await?;
    Ok(file::read(&text.unwrap_or_default())?)
}

#[test]
fn a_list_is_bought_at_the_counter() {
    journey(|page| async move {
        let mut job = job("buy-1");
        let bags = bags(&job);
        // What the pour needs, and the line below.
        let lines = needs_of(&job).len() + 1;
        let (none, one) = (format!("0 of {lines}"), format!("1 of {lines}"));
        let id = job.fresh_id();
        job.buying.own.push(OwnLineEntry {
            id,
            words: "Mixing paddle".to_owned(),
            price: Typed::plain("24.90"),
            ..OwnLineEntry::default()
        });
        start_with(&page, &job, "/job/buy-1/buy").await?;
        page.see("Buying list").await?;
        page.see(&format!("{bags} bags")).await?;
        page.open_all().await?;
        page.type_into("Self-leveling underlayment: price of one (bag), $", "38.50")
            .await?;
        // Bags at 38.50 and the paddle; tax of 6.25 percent on both.
        let cost = f64::from(bags) * 38.5 + 24.9;
        page.see(&format!("${cost:.2}")).await?;
        page.type_into("Sales tax", "6.25").await?;
        let tax = (cost * 6.25).round() / 100.0;
        page.see(&format!("${:.2}", cost + tax)).await?;
        page.type_into("Self-leveling underlayment: on hand, bags", "1")
            .await?;
        page.see(&format!("{} bags", bags - 1)).await?;
        page.accessible().await?;
        page.whole_picture("supply-buy").await?;
        page.dark(true).await?;
        page.accessible().await?;
        page.whole_picture("supply-buy-dark").await?;
        page.dark(false).await?;

        page.click("At the counter").await?;
        page.click(&format!(
            "{} bagsSelf-leveling underlayment · Back bedroom",
            bags - 1
        ))
        .await?;
        page.see(&one).await?;
        page.accessible().await?;
        page.whole_picture("supply-counter").await?;
        page.reload().await?;
        page.up().await?;
        page.see(&one).await?;
        let saved = kept(&page, "buy-1").await?;
        let row = saved.buying.row(Kind::Pour, Some(job.rooms[0].id)).unwrap();
        assert_eq!(row.ticked.text, (bags - 1).to_string());

        // A tick survives, and says by how much the line grew: nothing is on hand any more.
        page.open_all().await?;
        page.type_into("Self-leveling underlayment: on hand, bags", "0")
            .await?;
        page.see("1 bag more since you ticked it.").await?;
        page.see(&none).await?;
        page.refused(
            "Self-leveling underlayment: price of one (bag), $",
            "-2",
            "Enter 0 or more.",
        )
        .await
    });
}

/// Ten by twelve feet: 120 square feet of floor; tile on two lines, one of them in square yards.
const QUOTE: &str = "Item\tQty\tUnit\tPrice\nPorcelain floor tile\t200\tSF\t4.25\nUncoupling membrane\t14\tSY\t16.00\nBaseboard, primed\t30\tLF\t2.35\nLabor, tile setting\t16\thrs\t68.00\nPermit\t1\tallowance\t225.00";

#[test]
fn a_homeowner_checks_a_quote_without_a_job() {
    journey(|page| async move {
        page.open("/sums").await?;
        page.up().await?;
        page.click("Check a quoteA quote’s lines against what a room needs by its sizes.")
            .await?;
        page.click("Floor tile").await?;
        page.click("Baseboard").await?;
        page.type_into("Width of the room", "10'").await?;
        page.type_into("Length of the room", "12'").await?;
        page.paste_into("Lines of the quote", QUOTE).await?;
        page.click("Read these lines").await?;
        page.see("Lines read: 5. Headings and sums were passed over: line 1.")
            .await?;
        // 120, 132 and 144 ft2: 68 over the usual.
        page.see("200 ft² quoted, 68 ft² more than usual").await?;
        // 14 yd2 are 126 ft2: between 13.33 and 16.
        page.see("14 yd² quoted; at the least 13.3 yd²").await?;
        // 44 ft round the room.
        page.see("30 ft quoted, 14 ft less than can do the job")
            .await?;
        page.see("Work is not checked, only material.").await?;
        page.see("3 of 5").await?;
        page.see("What is the rest for?").await?;
        // 850 + 224 + 70.50 of 2457.50.
        page.see("47 %").await?;
        page.accessible().await?;
        page.whole_picture("supply-quote").await?;
        page.dark(true).await?;
        page.whole_picture("supply-quote-dark").await?;
        page.dark(false).await?;
        // What a line is for is the user's to say.
        page.choose("Line 1 is for", "nothing worked out here")
            .await?;
        page.see("Tile: the job needs about 132 ft², and no line names it.")
            .await?;
        page.reload().await?;
        page.up().await?;
        page.see("Tile: the job needs about 132 ft²").await?;
        page.click("Take out all lines").await?;
        page.see("All lines are taken out.").await?;
        page.click("Undo").await?;
        page.see("Porcelain floor tile").await
    });
}

#[test]
fn a_sheet_goes_onto_paper_in_letter_and_a4() {
    journey(|page| async move {
        start_with(&page, &job("sheet-1"), "/job/sheet-1/sheet").await?;
        page.see("Job sheet").await?;
        page.see("Buying list").await?;
        page.accessible().await?;
        page.whole_picture("supply-sheet").await?;
        for (name, wide, tall, box_) in [
            ("letter", 8.5, 11.0, "/MediaBox [0 0 612 792]"),
            ("a4", 8.27, 11.69, "/MediaBox [0 0 59"),
        ] {
            let pdf = printed_on(&page, name, wide, tall).await?;
            let text = String::from_utf8_lossy(&pdf);
            assert!(text.contains(box_), "{name}");
            let sheets = text.matches("/Type /Page\n").count();
            assert!((2..=5).contains(&sheets), "{name}: {sheets} sheets");
        }
        // What is left out stays out. After printing the page is laid out anew first.
        page.script_async(
            "await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)))",
        )
        .await?;
        page.click("Circuits").await?;
        let saved = kept(&page, "sheet-1").await?;
        assert_eq!(saved.sheet.left_out, [calc::job::SheetPart::Circuits]);
        Ok(())
    });
}
