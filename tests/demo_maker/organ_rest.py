"""The positions of the vibrato card, the power supply and the crossover in the speaker cabinet."""

VIBRATO_CARD = """
card=vibrato and percussion; section=percussion; supply_rail=+24 V; lead_style=radial; hole_diameter_mm=1; plated=no
headroom_mm=25; left_mm=8; right_mm=8; front_mm=8; back_mm=8
"""
VIBRATO = """
C201 | timing | 40/40 | 40 µF | 40 V | 2.5
    wet; old_tolerance=±10 %; plus_towards=relay coil; headroom_mm=14; note=sets the vibrato delay
C202 | timing | 47n 100 | 47 nF | 100 V | 7.5
    film; match_group=phase shift
C203 | timing | 47n 100 | 47 nF | 100 V | 7.5
    film; match_group=phase shift
C204 | rail decoupling | 100/40 | 100 µF | 40 V | 30
    wet; axial; plus_towards=edge connector
C205 | timing | 10/25 | 10 µF | 25 V | 2
    wet; plus_towards=diode; leakage_most_ua=5
C206 | rail decoupling | 32/64 | 32 µF | 64 V | 5
    wet; plus_towards=coil; reading_capacitance=21 µF; reading_esr_ohm=14; meter_hz=120; measured=out
    visual=brown residue
C207 | coupling | 0.22/250 | 220 nF | 250 V | 15
    film; left_mm=11; right_mm=11
C208 |  | 1?0 (worn off) |  |  |
    visual=print worn off; note=to be traced first
"""
SUPPLY_CARD = """
card=power supply; section=supply; supply_rail=+24 V; lead_style=radial; hole_diameter_mm=1.2; plated=no
headroom_mm=45; left_mm=12; right_mm=12; front_mm=12; back_mm=12
"""
SUPPLY = """
C301 | reservoir | 4700/50 | 4700 µF | 50 V | 10
    wet; lead_style=snap-in; hole_diameter_mm=2; plus_towards=rectifier; dc_lowest_v=0; dc_highest_v=36
    left_mm=19; right_mm=19; front_mm=19; back_mm=19; headroom_mm=55; ripple_ma=1400; ripple_hz=100
    reading_capacitance=3300 µF; reading_esr_ohm=0.31; meter_hz=120; measured=out; visual=domed vent
C302 | reservoir | 1000/40 | 1000 µF | 40 V | 7.5
    wet; plus_towards=rectifier; ripple_ma=450; ripple_hz=100; dc_lowest_v=0; dc_highest_v=27
C303 | regulator output | 220/25 | 220 µF | 25 V | 3.5
    wet; plus_towards=output; esr_least_ohm=0.03; esr_most_ohm=0.4; esr_hz=100000
    note=the regulator needs some resistance, but not much
C304 | interference suppression | 0.1 X2 | 100 nF |  | 15
    old_technology=paper; old_tolerance=±20 %; old_rating=275 V a.c.; safety_class=X2; mains=yes; supply_rail=
    visual=cracked moulding; note=across the mains
C305 | interference suppression | 4n7 Y2 | 4.7 nF |  | 10
    old_technology=paper; old_tolerance=±20 %; old_rating=250 V a.c.; safety_class=Y2; mains=yes; supply_rail=
    note=from the live side to earth
C306 | rail decoupling | 100/35 | 100 µF | 35 V | 3.5
    wet; plus_towards=emitter; hot_part_k=14; note=beside the hot dropper resistor
C307 | bypass | 47/35 | 47 µF | 35 V | 2.5
    wet; plus_towards=reference diode
C308 | feedback leg | 10/63 | 10 µF | 63 V | 2
    wet; plus_towards=divider
"""
CROSSOVER_CARD = "card=crossover; section=cabinet; hole_diameter_mm=1.3; plated=no"
CROSSOVER = """
C401 | loudspeaker crossover | 150/35 bipolar | 150 µF | 35 V | 5
    both ways; lead_style=radial; left_mm=22; right_mm=22; front_mm=10; back_mm=10; headroom_mm=13; may_lie_flat=yes
    ac_peak_v=18; note=under the bracket of the tweeter
C402 | loudspeaker crossover | 6.8/100 | 6.8 µF | 100 V |
    both ways; deep
C403 | loudspeaker crossover | 10/63 bipolar | 10 µF | 63 V |
    both ways; deep
C404 | loudspeaker crossover | 2.2/160 | 2.2 µF | 160 V | 45
    axial; old_technology=film PP; old_tolerance=±5 %; headroom_mm=30
"""
