"""The demo kitchen, as a cook would write it, and the Tuesday it is read on."""

from datetime import datetime
from zoneinfo import ZoneInfo

NAME = "brackmoor-weir"
NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))
