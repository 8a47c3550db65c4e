# make demo: set all up, draft the demo orders, say where the pages lie.
# make test: set all up, then format, lint, types, layers and tests.
# make bench-lay: how short the lays are, beside the best known; half an hour.
# make survey: every order on every woman of docs/bodies.md; half an hour.
# make combos: every feature alone and 300 random orders on 50 women, then their contact
#   sheets; three quarters of an hour.
VENV := .venv
PY := $(VENV)/bin/python
OUT := demo-out

.PHONY: demo test bench bench-lay survey combos lock clean

demo: $(VENV)/.ok
	rm -rf $(OUT)
	$(VENV)/bin/clothwright starter $(OUT)
	@for order in peplum-top zip-top panelled-top sleeved-top bishop-blouse straight-skirt trousers sheath-dress knit-top; do \
	  for sheet in make making cutting; do \
	    $(VENV)/bin/clothwright $$sheet $(OUT)/$$order.toml --into $(OUT)/$$order || exit 1; \
	  done; \
	done
	@for page in "" --quote; do \
	  $(VENV)/bin/clothwright cost $(OUT)/peplum-top.toml --new-block --cloth shell=1.6 \
	    --cloth lining=0.3 --cloth interlining=0.6 --into $(OUT)/peplum-top $$page || exit 1; \
	done
	@echo "The pages lie in $(CURDIR)/$(OUT)"

test: $(VENV)/.ok
	$(VENV)/bin/ruff format --check .
	$(VENV)/bin/ruff check .
	$(VENV)/bin/mypy
	$(VENV)/bin/lint-imports
	$(PY) -m pytest

bench: $(VENV)/.ok
	$(PY) bench/redraw.py
	$(PY) bench/browser.py
	$(PY) bench/sizes.py

bench-lay: $(VENV)/.ok
	$(PY) bench/lay.py

survey: $(VENV)/.ok
	$(PY) bench/bodies.py
	$(PY) bench/styles.py

combos: $(VENV)/.ok
	$(PY) bench/combos.py
	$(PY) bench/contact.py $(OUT)/contact

lock:
	$(VENV)/bin/uv pip compile -q --universal --python-version 3.11 --generate-hashes \
	  --no-annotate --no-header --group dev pyproject.toml -o requirements.lock

clean:
	rm -rf $(VENV) $(OUT)

$(VENV)/.ok: requirements.lock pyproject.toml
	python3 -m venv $(VENV) || { echo "first: apt-get install python3-venv" >&2; exit 1; }
	$(VENV)/bin/pip install -q --disable-pip-version-check uv==0.13.9
	$(VENV)/bin/uv pip sync -q --require-hashes --compile-bytecode --python $(PY) requirements.lock
	$(VENV)/bin/uv pip install -q --python $(PY) --no-deps --no-build-isolation -e .
	$(PY) -m compileall -q src
	touch $@
