"""The positions of the tone generator card: twelve alike, stacked so close that headroom is scarce.

Each position: reference | role | marking | capacitance | rated voltage | hole spacing, then what else is known of it.
"""

CARD = """
card=tone generator; section=tone generators; supply_rail=+15 V; lead_style=radial; hole_diameter_mm=1; plated=no
headroom_mm=12; may_lie_flat=no
"""
PRESETS = {
    "room": "left_mm=5.5; right_mm=5.5; front_mm=4.5; back_mm=4.5",
    "wide": "left_mm=7.5; right_mm=7.5; front_mm=4; back_mm=4",
    "wet": "old_technology=wet aluminium; old_tolerance=-10/+50 %; polarity=polar",
    "film": "old_technology=film PET; old_tolerance=±5 %",
    "both ways": "old_technology=wet aluminium; old_tolerance=±10 %; polarity=bipolar",
    "axial": "lead_style=axial; left_mm=22; right_mm=22; front_mm=12; back_mm=12",
    "deep": "left_mm=24; right_mm=24; front_mm=18; back_mm=18; headroom_mm=50",
}
TONE = """
C101 | coupling | 1/35 bipolar | 1 µF | 35 V | 5
    room; both ways; source_ohm=4700; load_ohm=47000; ac_peak_v=2
    note=swings both ways around 0 V, a film part would do
C102 | coupling | 10/25 | 10 µF | 25 V | 2.5
    room; wet; plus_towards=transistor; load_ohm=22000
C103 | rail decoupling | 47/16 | 47 µF | 16 V | 2.5
    room; wet; plus_towards=edge connector
C104 | rail decoupling | 100/63 | 100 µF | 63 V | 2.5
    wet; free_diameter_mm=7; plus_towards=edge connector
    dc_lowest_v=14.4; dc_highest_v=15.3; ac_peak_v=0.2; fault_v=22
    note=63 V was what the maker had, the rail never passes 22 V
C105 | timing | 22n 100 | 22 nF | 100 V | 5
    room; film; match_group=divider
C106 | filter or equaliser | 47n 63 | 47 nF | 63 V | 5
    room; film; match_group=upper tone filter
C107 | filter or equaliser | 15n 63 | 15 nF | 63 V | 5
    room; film; match_group=lower tone filter
C108 | filter or equaliser | 2.2/50 | 2.2 µF | 50 V | 2
    room; wet; old_tolerance=±10 %; plus_towards=filter input
C109 | bypass | 22/10 | 22 µF | 10 V | 2
    room; wet; plus_towards=emitter
C110 | bootstrap | 47/25 | 47 µF | 25 V | 2.5
    room; wet; plus_towards=emitter follower
C111 | feedback leg | 22/16 | 22 µF | 16 V | 2.5
    room; wet; plus_towards=amplifier input
C112 | coupling | 0.47/35 bead | 0.47 µF | 35 V | 2
    room; old_technology=tantalum; old_tolerance=±20 %; polarity=polar; plus_towards=resistor
C113 | coupling | 0.1/100 | 100 nF | 100 V | 10
    wide; film; load_ohm=100000
C114 | rail decoupling | 100n | 100 nF | 50 V | 5
    room; old_technology=ceramic class 2; old_tolerance=-20/+80 %
C115 | timing | 1n 2% | 1 nF | 63 V | 5
    room; old_technology=polystyrene; old_tolerance=±2 %
C116 | coupling | 4.7/50 | 4.7 µF | 50 V | 2
    room; wet; plus_towards=keying bus; dc_lowest_v=2.1; dc_highest_v=7.8; ac_peak_v=1
C117 | filter or equaliser | 0.33/63 | 330 nF | 63 V | 7.5
    wide; film
"""
