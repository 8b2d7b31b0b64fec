//! Without a signal.

use tests::journey::journey;

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
