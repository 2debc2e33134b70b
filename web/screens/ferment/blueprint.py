"""The screens of fermenting share one blueprint."""

from flask import Blueprint

screen = Blueprint("ferment", __name__)
