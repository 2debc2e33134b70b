"""Long work in slices: how far it is, that it ends, that it may be dropped, that only a few are kept."""

from collections.abc import Iterator

import pytest

from web.work import MOST_JOBS, MOST_RESULTS, Work


def counting(to: int):
    yield from range(to)
    return f"counted to {to}"


def finished(work: Work, key: str, to: int = 3) -> None:
    work.begin(key, lambda: counting(to))
    while work.advance(key) is not None:
        pass


@pytest.fixture
def work() -> Iterator[Work]:
    return Work(slice_s=0.0)


def test_a_slice_advances_it_by_a_step_at_least(work: Work):
    work.begin("count", lambda: counting(3))
    assert [work.advance("count") for _ in range(4)] == [0, 1, 2, None]


def test_a_long_slice_does_it_all():
    work = Work(slice_s=60.0)
    work.begin("count", lambda: counting(1000))
    assert work.advance("count") is None


def test_what_it_came_to_is_kept(work: Work):
    finished(work, "count")
    assert work.result("count") == "counted to 3"


def test_a_finished_job_is_no_longer_under_way(work: Work):
    finished(work, "count")
    assert not work.is_under_way("count")


def test_begun_twice_it_goes_on_where_it_was(work: Work):
    for _ in range(2):
        work.begin("count", lambda: counting(3))
        last = work.advance("count")
    assert last == 1


def test_a_dropped_job_leaves_nothing(work: Work):
    work.begin("count", lambda: counting(3))
    work.drop("count")
    assert not work.is_under_way("count")
    assert work.result("count") is None


def test_a_job_that_breaks_is_gone(work: Work):
    def broken():
        yield 0
        raise ValueError

    work.begin("broken", broken)
    work.advance("broken")
    with pytest.raises(ValueError):
        work.advance("broken")
    assert not work.is_under_way("broken")


def test_only_the_latest_jobs_are_kept(work: Work):
    for name in range(MOST_JOBS + 1):
        work.begin(str(name), lambda: counting(3))
    assert [work.is_under_way(str(name)) for name in range(MOST_JOBS + 1)] == [False] + [True] * MOST_JOBS


def test_only_the_results_used_last_are_kept(work: Work):
    for name in range(MOST_RESULTS):
        finished(work, str(name))
    work.result("0")
    finished(work, "new")
    assert work.result("1") is None
    assert work.result("0") is not None
