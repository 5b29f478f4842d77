"""Settings of hypothesis for all tests: a busy machine is no error in what is tested."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

settings.register_profile("house", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("house")
