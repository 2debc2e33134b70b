"""The mixing table's screens share one blueprint."""

from flask import Blueprint

screen = Blueprint("mix", __name__)
