"""One build at a time in this folder, where the system can tell."""

from collections.abc import Generator
from contextlib import contextmanager

from building.paths import BUILD

try:
    import fcntl
except ImportError:  # Windows: whoever runs two at once there must look out
    fcntl = None


@contextmanager
def alone(at: str = "build") -> Generator[None]:
    BUILD.mkdir(exist_ok=True)
    with (BUILD / f"lock-{at}").open("w") as lock:
        if fcntl:
            try:
                fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                print("Waiting for another build in this folder …", flush=True)
                fcntl.flock(lock, fcntl.LOCK_EX)
        yield
