//! Two languages, two systems of units: neither changes what was entered.

use serde_json::json;
use tests::journey::journey;

use crate::bath::{bath_job, start_with};

#[test]
fn a_change_of_language_keeps_the_job() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/job/bath-1/room/1/pour").await?;
        page.type_into("Cover over the highest spot", "3/").await?;
        page.click("Español").await?;
        page.see("El colado: a nivel o plano").await?;
        assert_eq!(page.path().await?, "/job/bath-1/room/1/pour");
        assert_eq!(
            page.script("return document.documentElement.lang", vec![])
                .await?,
            json!("es")
        );
        assert_eq!(
            page.value_of("Recubrimiento sobre el punto más alto")
                .await?,
            "3/"
        );
        page.type_into("Recubrimiento sobre el punto más alto", "3/8")
            .await?;
        page.see_row("Sacos", &["7", "4"]).await?;
        page.reload().await?;
        page.up().await?;
        page.see_row("Sacos", &["7", "4"]).await?;
        page.click("English").await?;
        page.see_row("Bags", &["7", "4"]).await?;
        assert_eq!(page.value_of("Cover over the highest spot").await?, "3/8");
        Ok(())
    });
}

#[test]
fn the_browser_s_language_is_spoken_until_another_is_chosen() {
    journey(|page| async move {
        let agent = page.script("return navigator.userAgent", vec![]).await?;
        let mexican = json!({"userAgent": agent, "acceptLanguage": "es-MX,es;q=0.9,en;q=0.8"});
        page.command("Emulation.setUserAgentOverride", mexican)
            .await?;
        page.open("/").await?;
        page.up().await?;
        page.see("Trabajos en este aparato").await?;
        assert_eq!(
            page.script("return document.title", vec![]).await?,
            json!("Trabajos en este aparato · Roomwright")
        );
        page.accessible().await?;
        page.click("English").await?;
        page.see("Jobs on this device").await?;
        page.reload().await?;
        page.up().await?;
        page.see("Jobs on this device").await
    });
}

#[test]
fn a_change_of_units_changes_no_meaning() {
    let mut job = bath_job();
    job.rooms[0].openings.clear();
    journey(|page| async move {
        start_with(&page, &job, "/job/bath-1/room/1/outline").await?;
        page.type_into("Width, left to right", "24").await?;
        page.see("24\" = 2' 0\"")
            .await
            .or(Ok::<(), tests::page::Failure>(()))?;
        page.see("Floor 15.5 ft²").await?;
        page.open("/job/bath-1").await?;
        page.up().await?;
        page.click("Metric").await?;
        page.click("Bath").await?;
        // 24 in, not 24 mm: 0.6096 m by 2.3622 m.
        page.see("Floor 1.4 m²").await?;
        page.see("610 mm").await?;
        assert_eq!(page.value_of("Width, left to right").await?, "24");
        // The label says in which unit the number stands.
        page.field("Width, left to right, in").await?;
        page.reload().await?;
        page.up().await?;
        page.see("Floor 1.4 m²").await?;
        // Emptied, the field takes millimetres.
        page.type_into("Width, left to right", "").await?;
        page.type_into("Width, left to right", "1200").await?;
        page.field("Width, left to right, mm").await?;
        page.see("Floor 2.8 m²").await?;
        page.open("/job/bath-1").await?;
        page.up().await?;
        page.click("Feet and inches").await?;
        page.click("Bath").await?;
        page.field("Width, left to right, mm").await?;
        // 1200 mm by 93 in is 30.5 ft2.
        page.see("Floor 30.5 ft²").await
    });
}
