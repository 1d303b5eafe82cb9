//! A server in this process, and requests to it.

use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::path::PathBuf;

use axlebow_serve::{ServeOptions, Server};
use serde_json::Value;

/// A server with its page.
pub struct Page {
    pub port: u16,
    pub token: String,
}

/// An answer.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Answer {
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.body).unwrap_or_else(|error| panic!("{error}: {self:?}"))
    }
}

impl Page {
    /// A server that runs as long as the tests do.
    pub fn of(file: Option<PathBuf>) -> Page {
        let report = |_: &_, _: &_| Ok("<!doctype html><title>report</title>".to_owned());
        let server =
            Server::bind(ServeOptions { file, port: 0, system: None, prices: None, report }).unwrap();
        let address = server.address();
        let rest = address.strip_prefix("http://127.0.0.1:").unwrap();
        let (port, token) = rest.trim_end_matches('/').split_once('/').unwrap();
        let page = Page { port: port.parse().unwrap(), token: token.to_owned() };
        std::thread::spawn(move || server.run());
        page
    }

    /// Sends a request as it stands.
    pub fn send(&self, request: &[u8]) -> Answer {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port)).unwrap();
        stream.write_all(request).unwrap();
        let mut bytes = Vec::new();
        // A server that refuses a body may close before all of it is read.
        let _ = stream.read_to_end(&mut bytes);
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
        let status = head.split(' ').nth(1).and_then(|own| own.parse().ok()).unwrap_or(0);
        Answer { status, head: head.to_lowercase(), body: body.to_owned() }
    }

    fn head(&self, method: &str, path: &str) -> String {
        let Page { port, token } = self;
        format!("{method} /{token}/{path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\n")
    }

    pub fn get(&self, path: &str) -> Answer {
        self.send(format!("{}\r\n", self.head("GET", path)).as_bytes())
    }

    /// Sends a body with further headers, a line each.
    pub fn post_with(&self, path: &str, headers: &str, body: &str) -> Answer {
        let length = body.len();
        let head = self.head("POST", path);
        self.send(format!("{head}Content-Length: {length}\r\n{headers}\r\n{body}").as_bytes())
    }

    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.post_with(path, "Content-Type: application/json\r\n", &body.to_string())
    }

    /// What a page begins with.
    pub fn begin(&self, from: &str) -> Value {
        let answer = self.get(&format!("controls?from={from}"));
        assert_eq!(answer.status, 200, "{answer:?}");
        answer.json()
    }
}
