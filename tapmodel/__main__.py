"""`python -m tapmodel` is the command line."""

from tapmodel.cli.start import main

if __name__ == "__main__":
    main()
