"""What the page may do. One text for the server's header and for the page itself: a static host may send no header."""

CONTENT_SECURITY_POLICY = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
    )
)

FRAMING = "frame-ancestors 'none'"
"""Only a header can say this; in the page it is ignored with a warning."""
