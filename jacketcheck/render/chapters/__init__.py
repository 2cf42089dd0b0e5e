"""The chapters of a report, each from what the run and its input hold."""
