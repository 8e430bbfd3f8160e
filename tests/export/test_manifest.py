from pathlib import Path

from tapmodel.export.manifest import FileRecord, file_record


def test_record_of_a_known_file(tmp_path: Path):
    path = tmp_path / "sub" / "abc.txt"
    path.parent.mkdir()
    path.write_bytes(b"abc")
    # The check sum of "abc" is the first example of FIPS 180-4.
    digest = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert file_record(path, tmp_path) == FileRecord("sub/abc.txt", 3, digest)
