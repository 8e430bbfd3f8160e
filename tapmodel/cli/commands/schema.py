"""`tapmodel schema`: what a job file may say."""

from tapmodel.cli.telling import print_json


def schema() -> None:
    """Print the JSON Schema of the job file."""
    from tapmodel.spec.job_file import json_schema

    print_json(json_schema())
