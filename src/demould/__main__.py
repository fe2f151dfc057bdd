"""``python -m demould``."""

from demould.counter.cli.main import main

if __name__ == "__main__":
    main()
