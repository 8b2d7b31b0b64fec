//! Without a signal.

use tests::journey::journey;

use crate::bath::{bath_job, put};

#[test]
fn every_address_opens_from_the_device_once_it_was_visited() {
    journey(|page| async move {
        page.open("/").await?;
        page.kept_for_offline().await?;
        page.stop_server();
        page.reload().await?;
        page.up().await?;
        for path in ["/a/deep/link", "/?fresh", "/an-address-that-is-none"] {
            page.open(path).await?;
            page.up().await?;
            assert_eq!(page.path().await?, path);
        }
        Ok(())
    });
}

/// A job made on the first visit, and every screen of it, with the signal gone.
#[test]
fn every_screen_works_without_a_signal() {
    journey(|page| async move {
        page.open("/").await?;
        page.kept_for_offline().await?;
        put(&page, &bath_job()).await?;
        page.stop_server();
        for (path, words) in [
            ("/", "Bath house"),
            ("/job/bath-1", "Keep and carry"),
            ("/job/bath-1/room/1/outline", "Floor 41.7 ft²"),
            ("/job/bath-1/room/1/survey", "Every spot is read."),
            ("/job/bath-1/room/1/pour", "2.51 ft³"),
            ("/job/bath-1/room/1/doorways", "Left jamb"),
            ("/sums", "Quick sums"),
            ("/sums/pour", "A bag makes"),
            ("/sums/ramp", "Slope"),
            ("/gallery", "Gallery"),
            (
                "/an-address-that-is-none",
                "There is no page at this address.",
            ),
        ] {
            page.open(path).await?;
            page.up().await?;
            page.see(words).await?;
            page.see("Ready to work without a signal.").await?;
        }
        // It works, and what is entered is kept.
        page.open("/job/bath-1/room/1/pour").await?;
        page.up().await?;
        page.type_into("Cover over the highest spot", "1/2").await?;
        page.see_row("Least depth", &["1/2\"", "1/2\""]).await?;
        page.reload().await?;
        page.up().await?;
        page.see_row("Least depth", &["1/2\"", "1/2\""]).await
    });
}

/// Everything that a visit needs is in the worker's list: what the page loads without a server, it got from there.
#[test]
fn every_file_of_the_page_is_kept() {
    journey(|page| async move {
        page.open("/").await?;
        page.kept_for_offline().await?;
        page.stop_server();
        page.reload().await?;
        let missing = page
            .script_async(
                "const wanted = [...document.querySelectorAll('script[src], link[href]')].map((e) => e.src || e.href);
                 const names = await caches.keys();
                 const cache = await caches.open(names[0]);
                 const missing = [];
                 for (const address of wanted) if (!await cache.match(address)) missing.push(address);
                 return { wanted: wanted.length, names: names.length, missing };",
            )
            .await?;
        assert_eq!(missing["missing"], serde_json::json!([]));
        assert_eq!(missing["names"], 1);
        assert!(
            missing["wanted"].as_u64().is_some_and(|count| count >= 6),
            "{missing}"
        );
        Ok(())
    });
}
