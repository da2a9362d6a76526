"""`python -m producer` is the same program as `producer`."""

from producer.cli.main import main

if __name__ == "__main__":
    main()
