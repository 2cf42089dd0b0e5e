"""The bolt schedule: what a shop orders, installs and inspects. Computes; prints nothing."""

from jacketcheck.schedule.counts import Allowances
from jacketcheck.schedule.records import BoltSchedule, ScheduleReport
from jacketcheck.schedule.schedule import bolt_schedule, schedules_of

__all__ = ["Allowances", "BoltSchedule", "ScheduleReport", "bolt_schedule", "schedules_of"]
