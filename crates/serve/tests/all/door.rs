//! Who is let in.

use serde_json::json;

use crate::page::Page;

#[test]
fn only_the_own_page_of_this_machine_is_let_in() {
    let page = Page::of(None);
    let (port, token) = (page.port, page.token.as_str());
    assert!(token.len() == 32 && token != Page::of(None).token, "128 bits, another for each server");
    let ask = |path: &str, host: &str, more: &str| {
        page.send(
            format!("GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n{more}\r\n").as_bytes(),
        )
        .status
    };
    let (own, here) = (format!("/{token}/"), format!("127.0.0.1:{port}"));
    assert_eq!(ask(&own, &here, ""), 200);
    assert_eq!(ask(&own, &format!("localhost:{port}"), ""), 200);
    for wrong in ["/", "/0123456789abcdef0123456789abcdef/", "/page.js", &format!("/{}/", &token[1..])] {
        assert_eq!(ask(wrong, &here, ""), 404, "{wrong}");
    }
    for wrong in ["elsewhere.example", "127.0.0.1", "127.0.0.1:1", &format!("elsewhere.example:{port}")] {
        assert_eq!(ask(&own, wrong, ""), 403, "{wrong}");
    }
    assert_eq!(ask(&own, &here, &format!("Origin: http://{here}\r\n")), 200);
    for wrong in
        ["null", "http://elsewhere.example", &format!("https://{here}"), &format!("http://localhost:{port}")]
    {
        assert_eq!(ask(&own, &here, &format!("Origin: {wrong}\r\n")), 403, "{wrong}");
    }
}

#[test]
fn methods_and_bodies_that_no_page_of_ours_sends_are_refused() {
    let page = Page::of(None);
    let begun = page.begin("trailer-5-inch-duals");
    let good = json!({ "revision": begun["revision"], "values": {}, "case": "rated-load" });
    assert_eq!(page.post("figures", &good).status, 200);
    assert_eq!(page.get("figures").status, 405);
    assert_eq!(page.post_with("page.js", "Content-Type: application/json\r\n", "{}").status, 405);
    let text = good.to_string();
    assert_eq!(page.post_with("figures", "Content-Type: text/plain\r\n", &text).status, 415);
    assert_eq!(page.post_with("figures", "", &text).status, 415);
    for malformed in
        ["", "{", "[]", "\u{0}", &text.replace('}', ",\"more\":1}"), &text.replace("values", "valves")]
    {
        let answer = page.post_with("figures", "Content-Type: application/json\r\n", malformed);
        assert_eq!(answer.status, 400, "{malformed}: {answer:?}");
    }
    let large = format!("{{\"revision\":\"{}\"}}", "x".repeat(100_000));
    assert_eq!(page.post_with("figures", "Content-Type: application/json\r\n", &large).status, 413);
    let old = json!({ "revision": "0", "values": {}, "case": "rated-load" });
    assert_eq!(page.post("figures", &old).status, 410);
    assert_eq!(page.send(b"nonsense\r\n\r\n").status, 400);
    assert_eq!(page.get("controls?from=../../etc/passwd").status, 400);
}

#[test]
fn an_answer_says_what_the_browser_may_do_with_it() {
    let page = Page::of(None);
    for path in ["", "page.js", "page.css", "controls", "none-of-ours"] {
        let head = page.get(path).head;
        for header in [
            "content-security-policy: default-src 'none'; script-src 'self'; style-src 'self';",
            "x-content-type-options: nosniff",
            "referrer-policy: no-referrer",
            "cache-control: no-store",
        ] {
            assert!(head.contains(header), "{path}: {header}\n{head}");
        }
        assert!(!head.contains("unsafe"), "{head}");
    }
    let html = page.get("").body;
    assert!(
        !html.contains("http") && !html.contains("style=") && !html.contains("onclick"),
        "nothing inline or from elsewhere"
    );
}
