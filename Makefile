# Two recipes matter: `make serve` builds the pages and serves them here, `make test` runs every suite.
# Works with make 3.81 and without GNU tools. All that is made lies in .venv, build and site/node_modules.

SUITES = calc laws every outside golden site browser pyodide repo
PARTS = $(SUITES:%=test-%)

.PHONY: serve test site zip bench long lint lock picture clean env-site env-test $(PARTS)
.DEFAULT_GOAL = serve

# The first Python from 3.11 on; `make PYTHON=...` names another.
PYTHON = $(shell for p in python3 python3.14 python3.13 python3.12 python3.11; do \
	if $$p -c 'import sys; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1; then echo $$p; break; fi; done)

RUN = PYTHONPATH=site .venv/bin/python
MAKE_ENV = python="$(PYTHON)"; \
	if test -z "$$python"; then \
	echo "Python 3.11 or newer is needed; on Debian type: sudo apt install python3 python3-venv, on a Mac: brew install python" >&2; \
	exit 1; fi; \
	"$$python" site/builder/environment.py

serve: env-site
	@$(RUN) -m builder.serve

site: env-site
	@$(RUN) -m builder.build build/site

# The pages in one file, to be carried anywhere.
zip: env-site
	@$(RUN) -m builder.build build/site
	@$(RUN) -m builder.stick build/site build/wedgework.zip

# On every core, a file of tests in one process; then what measures time, alone, on the pages that are built already.
TESTED = WEDGEWORK_TESTED=build/tested
test: env-test
	@rm -rf build/tested
	@$(TESTED) $(RUN) -m pytest -n auto --dist loadfile --no-loadscope-reorder -m "not long and not alone"
	@$(TESTED) $(RUN) -m pytest -m "alone and not long"

# One suite: make test-calc, test-laws, ...
$(PARTS): test-%: env-test
	@$(RUN) -m pytest tests/$*

long: env-test
	@$(RUN) -m pytest -m long

lint: env-test
	@$(RUN) -m ruff check .
	@$(RUN) -m mypy
	@.venv/bin/lint-imports

BENCH = PYTHONPATH=site:tests .venv/bin/python tests/bench
bench: env-test
	@$(BENCH)/ratios.py
	@$(BENCH)/answers.py
	@$(BENCH)/start.py
	@$(BENCH)/keys.py
	@$(BENCH)/tasks.py
	@$(BENCH)/stripes.py
	@$(BENCH)/memory.py
	@$(BENCH)/judged_pages.py
	@$(BENCH)/judged.py
	@$(BENCH)/page.py

# The picture in the README, drawn by the program; a test compares it byte for byte.
picture: env-site
	@$(RUN) -m builder.picture

# Both lock files, for every Python from 3.11 on and every system. Needs the network.
LOCK = .venv/bin/uv --quiet pip compile pyproject.toml --universal --python-version 3.11 --generate-hashes \
	--no-emit-index-url --custom-compile-command "make lock" --upgrade
lock: env-test
	@$(LOCK) --group site --group build --output-file site/requirements.txt
	@$(LOCK) --group test --group lint --group lock --constraint site/requirements.txt --output-file tests/requirements.txt
	@.venv/bin/uv --quiet pip compile tests/pyodide/requirements.in --python-version 3.14 --python-platform wasm32-pyodide2024 \
		--generate-hashes --no-emit-index-url --constraint tests/requirements.txt --custom-compile-command "make lock" --upgrade \
		--output-file tests/pyodide/requirements.txt
	@cd site && npm install --package-lock-only --silent

env-site:
	@$(MAKE_ENV) site node

env-test:
	@$(MAKE_ENV) site tests node pyodide browser

clean:
	rm -rf .venv build dist site/node_modules .pytest_cache .hypothesis .mypy_cache .ruff_cache .import_linter_cache
