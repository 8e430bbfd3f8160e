from tapmodel.export.step_text import compacted

HEAD = "ISO-10303-21;\nHEADER;\nFILE_NAME('a b; #7');\nENDSEC;\nDATA;\n"
TAIL = "ENDSEC;\nEND-ISO-10303-21;\n"


def _data(text: str) -> list[str]:
    return compacted(HEAD + text + TAIL).split("DATA;\n")[1].split("\nENDSEC;")[0].split("\n")


def test_equal_points_and_what_stands_on_them_are_written_once():
    text = """#10 = CARTESIAN_POINT('',(1.,2.,3.));
#11 = DIRECTION('',(0.,0.,1.));
#12 = VECTOR('',#11,1.);
#13 = LINE('',#10,#12);
#20 = CARTESIAN_POINT('',(1.,2.00000000000001,3.));
#21 = DIRECTION('',(0.,0.,1.));
#22 = VECTOR('',#21,1.);
#23 = LINE('',#20,#22);
#30 = EDGE_CURVE('',#1,#2,#23,.T.);
"""
    assert _data(text) == [
        "#1=CARTESIAN_POINT('',(1.,2.,3.));",
        "#2=DIRECTION('',(0.,0.,1.));",
        "#3=VECTOR('',#2,1.);",
        "#4=LINE('',#1,#3);",
        "#5=EDGE_CURVE('',#1,#2,#4,.T.);",
    ]


def test_topology_is_never_joined():
    point = "#1 = CARTESIAN_POINT('',(1.,2.,3.));\n"
    text = point + "#2 = VERTEX_POINT('',#1);\n#3 = VERTEX_POINT('',#1);\n"
    assert len(_data(text)) == 3


def test_strings_keep_their_blanks_hashes_and_semicolons():
    (line,) = _data("#9 = PRODUCT('tap #4; two  words','it''s', '' );\n")
    assert line == "#1=PRODUCT('tap #4; two  words','it''s','');"


def test_points_are_kept_to_ten_decimals():
    (line,) = _data(
        "#1 = CARTESIAN_POINT('',(-1.23456789012345E-02,-1.E-13,\n    123.45678901234));\n"
    )
    assert line == "#1=CARTESIAN_POINT('',(-0.0123456789,0.,123.4567890123));"


def test_a_broken_line_is_joined():
    (line,) = _data("#1 = EDGE_LOOP('',(#2,#3,\n    #4));\n")
    assert line == "#1=EDGE_LOOP('',(#2,#3,#4));"
