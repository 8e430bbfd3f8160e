"""`tapmodel schema`: what a job file, a file of the shop or a record may say."""

from enum import StrEnum
from typing import Annotated

import typer

from tapmodel.cli.telling import print_json


class Of(StrEnum):
    """What the schema is of."""

    JOB = "job"
    SHOP = "shop"
    RECORD = "record"


EXAMPLES = (
    "tapmodel schema > job.schema.json",
    "tapmodel schema record",
)


def schema(
    of: Annotated[Of, typer.Argument(metavar="[job|shop|record]", help="Of which file.")] = Of.JOB,
) -> None:
    """Print the JSON Schema of a job, a shop or a record."""
    if of is Of.RECORD:
        from tapmodel.run.record.read import json_schema
    elif of is Of.SHOP:
        from tapmodel.spec.shop_file import shop_schema as json_schema
    else:
        from tapmodel.spec.job_file import json_schema
    print_json(json_schema())
