"""The way into the example, and out of it with one tap."""

from __future__ import annotations

from flask import Blueprint, make_response, redirect, url_for

from web import example

screen = Blueprint("example", __name__)


@screen.post("/example")
def enter():
    """A fresh one, whatever was tried in the last."""
    example.forget()
    answer = make_response(redirect(url_for("today.page"), 303))
    answer.set_cookie(example.COOKIE, "yes", samesite="Lax")
    return answer


@screen.post("/example/leave")
def leave():
    example.forget()
    answer = make_response(redirect(url_for("today.page"), 303))
    answer.delete_cookie(example.COOKIE, samesite="Lax")
    return answer
