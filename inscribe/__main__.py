"""``python -m inscribe``."""

from inscribe.cli import main

if __name__ == "__main__":
    main()
