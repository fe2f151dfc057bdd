# Two doors: `make demo` and `make test`. Each sets up what it needs, once. The locks name every
# package, so nothing is resolved anew: a release made since the lock cannot stop an install.

VENV := .venv
BIN := $(VENV)/bin

.PHONY: demo test lock clean

demo: $(VENV)/.run
	$(BIN)/demould demo

test: $(VENV)/.test
	$(BIN)/ruff format --check src tests benchmarks
	$(BIN)/ruff check src tests benchmarks
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(BIN)/pytest -n auto --dist worksteal --cov --cov-report=term

$(VENV)/.run: requirements.lock pyproject.toml
	sh scripts/venv $(VENV)
	$(BIN)/pip install --quiet --no-deps --require-hashes -r requirements.lock
	$(BIN)/pip install --quiet --no-deps --no-build-isolation -e .
	touch $@

$(VENV)/.test: $(VENV)/.run requirements-test.lock
	$(BIN)/pip install --quiet --no-deps --require-hashes -r requirements-test.lock
	touch $@

# Only for whoever changes pyproject.toml; needs `uv` on the path.
COMPILE := uv pip compile --universal --generate-hashes --no-header --no-emit-index-url \
	--no-emit-find-links --quiet -p 3.11 pyproject.toml --group build
lock:
	$(COMPILE) -o requirements.lock
	$(COMPILE) --group test -o requirements-test.lock
	$(COMPILE) --group test --group bench -o benchmarks/requirements.lock

clean:
	rm -rf $(VENV)
