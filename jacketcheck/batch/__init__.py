"""A whole inventory of piers: on all cores or on a cluster, resumable, with flat memory."""

from jacketcheck.batch.run import BatchRun, BatchState, run_batch
from jacketcheck.batch.summary import BatchSummary, LimitStateCount

__all__ = ["BatchRun", "BatchState", "BatchSummary", "LimitStateCount", "run_batch"]
