"""A parts list of the demo's organ as a works might have kept it; invented, like the organ."""

ORGAN = """\
Stage organ of 1974;;;;;;
Parts list, sheet 3 (invented);;;;;;
;;;;;;
Pos.;Wert;Spannung;Tol.;Bauform;Anzahl;Bemerkung
C101;1µF;35;10;Elko RM 5;1;bipolar
C102, C205;10 µF;25;-10/+50;Elko RM 2,5;2;
C103;47µ;16;;Elko;1;
C104;100µ/63V;;;Elko 10 x 16;1;
C105;22n;100;5;MKT RM 7,5;1;
C106;47n;63;5;MKT;1;
C107-C109;15n;63;5;MKT;2;
C110;0,47µF;35;20;Tantalperle;1;
C112;100n;50;;X7R;1;
C113;47/16;;;;1;
C115;n.b.;;;;;
C116;;;;;1;
C201;40 µF;40;10;Elko axial;1;
C208;1?0;;;;1;worn off
C301;4700µF;50;;Becher Ø 30 x 50;1;
C302;32+32µF;350;;Becher;1;
C304;0,1µF X2;275V~;;;1;
C305;5-30p;;;Trimmer;1;
CN1;Stecker 6-pol;;;;1;
D1-D4;diode;;;;4;
IC1;;;;DIP 14;1;
R101, R102;4k7;;5;;2;
T1;Netztrafo;;;;1;

Summen;;;;;;
C102,C205;10 µF;25;;Elko;2;
C103;22µ;16;;Elko;1;
"""
REFERENCES = (
    "C101", "C102", "C103", "C104", "C105", "C106", "C107", "C108", "C109", "C110", "C112", "C113", "C201", "C205",
    "C208", "C301", "C302", "C304",
)  # fmt: skip
