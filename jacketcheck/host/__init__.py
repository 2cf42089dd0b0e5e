"""Loading plug-ins, keeping them apart, and naming whatever goes wrong in one."""

from jacketcheck.host.host import Host, PluginInfo, PluginProblem, Registered
from jacketcheck.host.loading import BUILT_IN, load_host

__all__ = ["BUILT_IN", "Host", "PluginInfo", "PluginProblem", "Registered", "load_host"]
