namespace Coldwright.Machine.Files;

/// <summary>The texts of the starter folder. A test reads them and checks that every key is explained.</summary>
public static class StarterText
{
    /// <summary>The starter's <c>machine.yaml</c>.</summary>
    public const string Machine = """
        # Your cooler as built. Change the values to yours; lines that start with '#' are notes or keys you may switch on.
        # Every value carries its unit: 17 barg (what a gauge shows) or 18 bara (above vacuum), 260 psig, -19 °C, 66 °F,
        # 0.311 in, 1/4 in, 12 mm, 2.6 kW, 8500 BTU/h. A bare "bar" or "psi" is refused: it does not say which of the two.
        # 'coldwright check .' reads this folder and reports everything that is wrong with it.
        name: my cooler

        room:
          temperature: 20 °C           # air temperature
          pressure: 1013 mbara         # barometer; gauge pressures are counted from it
          floor-area: 40 m2            # with the height: how much air there is to breathe
          height: 2.6 m
          # humidity: 50 %             # for dew on the outside of the box
          air-changes: 1 1/h           # fresh air; leave out if there is none

        charge:
          # names and fractions that sum to 1
          mixture: "nitrogen 0.27, methane 0.38, ethane 0.20, propane 0.09, isobutane 0.06"
          fractions: mole              # or: mass
          # mass: 320 g                # when you weighed it
          # release-height: 0.9 m      # lowest part above the floor; 0.6 m when left out
          # evacuated-to: 0.5 mbara    # before filling

        operation:
          high-pressure: 17.5 barg     # before the recuperator
          low-pressure: 3.6 barg       # at the cold end and at the suction
          # standstill-pressure: 15 barg   # of the whole loop, after it has stood warm
          # hold: neither                  # both pressures follow from hardware and charge; or high, low, both: held as they stand here
          # solve-for: charge              # what follows from a held pressure; or: throttle

        # Parts by name. The name is yours, the kind is one of: compressor, aftercooler, warm-exchanger, precooler,
        # recuperator, throttle, coil, vessel, block, cold-box, feed, buffer, valve, relief, flask.
        # Every part but cold-box, block and flask may have maximum-pressure, the pressure stamped on it.
        parts:
          compressor:
            kind: compressor
            type: rotary               # or: reciprocating
            displacement: 10.8 cm3     # swept volume per revolution
            speed: 2850 rpm
            # molar-flow: 0.08 mol/s   # a flow you measured, instead of displacement and speed
            # mass-flow: 2.3 g/s       # the same by mass
            # With a nameplate or a rating sheet, displacement, speed and both efficiencies may be left out:
            # nameplate: {rating: appliance, capacity: 2.7 kW, power: 790 W, refrigerant: R410A}   # of a whole appliance
            # nameplate:               # or of a compressor alone, at the conditions of its sheet
            #   {rating: compressor, capacity: 3 kW, refrigerant: R22, evaporating: 7.2 °C, condensing: 54.4 °C, return-gas: 35 °C, liquid: 46 °C}
            # rating-sheet:            # the maker's ten coefficients each, in the sheet's order
            #   refrigerant: R22
            #   units: si              # °C and kg/h; or ip: °F and lb/h
            #   mass-flow: [93.1, 3.2, -0.31, 0.041, -0.004, -0.002, 0.0002, -0.00005, 0.00001, 0.00001]
            #   power: [310, -4.1, 9.8, -0.11, 0.12, 0.05, 0, 0, 0, 0]
            #   lowest-evaporating: -15 °C
            #   highest-evaporating: 12 °C
            #   lowest-condensing: 30 °C
            #   highest-condensing: 60 °C
            #   superheat: 11 K        # or return-gas: 18 °C
            # supply-frequency: 50 Hz
            # poles: 2                 # of the motor
            # shell-cooling: fan       # or: still-air; or its shell-conductance in W/K, when you measured that
            # gas-volume: 0.9 L        # gas space in its shell; the charge fills that too. Aftercooler, warm exchanger and precooler have this key as well
            # oil:                     # separator and timed return
            #   circulation: 1.5 %     # of the gas by mass; leave out for the usual value
            #   separator-efficiency: 96 %
            #   sump-volume: 120 mL
            #   used-share: 50 %       # filled before the return opens
            #   return-bore: 1.2 mm
            #   return-length: 0.5 m
            #   density: 920 kg/m3
            #   viscosity: 20 mm2/s    # where it flows back
            #   charge: 350 g          # in the compressor when filled
            #   molar-mass: 350 g/mol  # given: gas dissolved in the oil counts as part of the charge
            #   cold-trap-efficiency: 90 %   # of a filter ahead of the cold end
            clearance: 1.5 %           # volume left at the end of the stroke, of the swept volume
            leakage-per-ratio: 1.3 %   # flow lost per unit of pressure ratio above 1
            suction-heating: 8 K       # warming of the gas on its way to the cylinder
            isentropic-efficiency: {2: 0.60, 4: 0.58, 6: 0.54, 10: 0.45}   # at these pressure ratios; or one number
            motor-efficiency: 0.82
            shell-heat: 85 %           # of the losses, what leaves through the shell instead of heating the gas
            maximum-discharge-temperature: 125 °C
            maximum-pressure: 28 barg
          aftercooler:
            kind: aftercooler
            approach: 6 K              # outlet above room air
            pressure-drop: 0.15 bar
            fan-power: 28 W
          warm-exchanger:              # ahead of the precooler; leave it and its lines out if you have none
            kind: warm-exchanger
            conductance: 30 W/K        # UA: watts per kelvin of mean difference
          precooler:                   # a second loop; leave it and its lines out if you have none
            kind: precooler
            outlet-temperature: -35 °C
            evaporator-difference: 6 K   # it evaporates this much colder than the outlet
            condenser-difference: 14 K   # it condenses this much warmer than the room
            carnot-share: 0.36           # cooling over electricity, as a share of the ideal
            capacity: 520 W
            fan-power: 30 W
            # loop:                    # the loop itself, from which its temperatures are worked out
            #   refrigerant: propane
            #   type: reciprocating
            #   displacement: 27 cm3   # or nameplate or rating-sheet, as above; speed when an inverter holds it
            #   supply-frequency: 50 Hz
            #   maximum-discharge-temperature: 120 °C
            #   cut-out: -50 °C        # evaporating temperature at which it is switched off
            #   condenser-conductance: 65 W/K     # refrigerant to room air
            #   condenser-air-flow: 550 m3/h
            #   evaporator-conductance: 30 W/K    # mixture to refrigerant
            #   superheat: 6 K         # held by a thermostatic valve; or capillary or valve, as of the throttle
            #   subcooling: 4 K
          recuperator:
            kind: recuperator
            conductance: 100 W/K
            high-tube: 3/8 in ACR      # tubes: 3/8 in ACR, 1 in type L, or outside diameter and wall: 6.35 x 0.8 mm
            low-tube: 3/4 in ACR
            length: 16 m
            low-side-pressure-drop: 0.2 bar
            # arrangement: tube-in-tube    # or tubes-in-tube, side-by-side; with both tubes and the length, conductance may be left out
            # tubes: 3                 # inner tubes, for tubes-in-tube
            # high-side: inner         # which tube holds the high pressure; or: outer
            # bond-width: 4 mm         # solder between tubes side-by-side
            # bond-thickness: 0.2 mm
            # coil-diameter: 160 mm    # leave out when straight
            # insulation-conductance: 0.1 W/(m K)   # around it, by length
            # roughness: 1.5 µm
          throttle:
            kind: throttle
            # capillary: {bore: 0.9 mm, length: 2.6 m, roughness: 0.5 µm, coil-diameter: 50 mm}
            # valve: {kv: 0.012, opening: 60 %}     # or cv: 0.014
          coil:
            kind: coil
            difference: 2.5 K          # the load is this much warmer than the mixture leaving the coil
            tube: 1/4 in ACR           # with tube and length, the difference may be left out
            length: 3.5 m
            # coil-diameter: 40 mm
            # turns: 27
            # place: inside            # the vessel; or around it
          vessel:                      # or, for a cooler that makes no liquid:  block: {kind: block}
            kind: vessel
            tube: 2-1/8 in type L
            length: 320 mm
            caps: domed                # or: flat
            cap-thickness: 2.5 mm      # safety rates the ends by it; measure yours
            # wall-material: copper
          cold-box:
            kind: cold-box
            inside: 0.26 x 0.22 x 0.34 m
            wall: 180 mm               # thickness of the insulation
            insulation: polyurethane-foam
            # layers:                  # instead of wall and insulation, from inside to outside
            #   - {material: aerogel-blanket, thickness: 20 mm}
            #   - {material: polyurethane-foam, thickness: 150 mm, moisture: 1 %, cell-gas: air}
            penetrations:              # wires and rods through the wall; tubes are counted from the lines
              - {material: copper-wire, area: 0.4 mm2, length: 180 mm}
          bottle:
            kind: feed
            gas: nitrogen              # or argon, oxygen, methane
            pressure: 17 barg          # in the cold vessel
            # supply-pressure: 0 barg        # before a feed compressor; leave out for a bottle with a regulator
            # compressor-efficiency: 0.4     # of that feed compressor
            # receiver: {volume: 40 L, pressure: 8 barg, lowest-pressure: 2 barg}   # cylinder or tank whose pressure falls
            # compressor:              # the feed compressor itself, for batch
            #   type: reciprocating    # or: rotary
            #   displacement: 7 cm3
            #   speed: 2850 rpm
            #   clearance: 4 %
            #   shell-cooling: fan     # or: still-air, water-bath; or its shell-conductance in W/K
            #   mass: 9 kg             # decides how long it may run before it is hot
            #   maximum-discharge-temperature: 120 °C
            #   maximum-shell-temperature: 90 °C
            #   lubrication: pump      # or: splash, dry-sump
            #   lowest-speed: 1400 rpm # at which its oil pump still works
            #   oil-charge: 350 g
          # buffer:                    # takes up gas from the high side; lines aftercooler to buffer, buffer to compressor
          #   kind: buffer
          #   volume: 10 L
          #   opening-pressure: 19 barg
          #   fully-open-pressure: 20.5 barg
          #   closing-pressure: 18.5 barg
          #   valve-bore: 2 mm
          #   bleed-bore: 0.4 mm
          #   bleed-length: 1.2 m      # leave out for an orifice
          fill-valve: {kind: valve}    # may have kv, its flow coefficient as far as it is opened
          drain-valve: {kind: valve}   # and seat-leak: 1 mg/s, body-mass: 120 g
          vessel-relief:
            kind: relief
            set-pressure: 21 barg
            # bore: 6 mm               # least bore when it is open; that of its line when left out
          loop-relief:
            kind: relief
            set-pressure: 24 barg
          flask:
            kind: flask
            volume: 2 L
            # boil-off: 0.2 L/d        # liquid nitrogen it loses when it stands
            # wall-mass: 250 g         # inner wall that the liquid cools, and its wall-material: stainless-304

        # Lines in the direction of flow. Exchangers have streams: recuperator.high, recuperator.low, precooler.feed.
        # A line without tube joins two parts directly; 'in' is room or cold-box.
        lines:
          - {from: compressor, to: aftercooler, tube: 3/8 in ACR, length: 0.9 m, in: room}
          - {from: aftercooler, to: warm-exchanger.high, tube: 3/8 in ACR, length: 0.7 m, in: room}
          - {from: aftercooler, to: loop-relief, tube: 3/8 in ACR, length: 0.2 m, in: room}
          - {from: warm-exchanger.high, to: precooler, tube: 3/8 in ACR, length: 0.4 m, in: room}
          - {from: precooler, to: recuperator.high, tube: 3/8 in ACR, length: 0.5 m, in: room}
          - {from: recuperator.high, to: throttle, tube: 1/4 in ACR, length: 0.3 m, in: cold-box}
          - {from: throttle, to: coil, tube: 1/4 in ACR, length: 0.2 m, in: cold-box}
          - {from: coil, to: recuperator.low, tube: 3/8 in ACR, length: 0.3 m, in: cold-box}
          - {from: recuperator.low, to: warm-exchanger.low, tube: 5/8 in ACR, length: 0.5 m, in: room}
          - {from: warm-exchanger.low, to: compressor, tube: 5/8 in ACR, length: 0.8 m, in: room}
          - {from: bottle, to: fill-valve, tube: 1/4 in ACR, length: 1.5 m, in: room}
          - {from: fill-valve, to: precooler.feed, tube: 1/4 in ACR, length: 0.6 m, in: room}
          - {from: precooler.feed, to: vessel, tube: 1/8 in ACR, length: 0.9 m, in: room}
          - {from: vessel, to: vessel-relief, tube: 1/8 in ACR, length: 0.5 m, in: room}
          - {from: vessel, to: drain-valve, tube: 3/16 in ACR, length: 0.4 m, in: cold-box}
          - {from: drain-valve, to: flask, tube: 1/4 in ACR, length: 0.3 m, in: room}

        """;

    /// <summary>The starter's <c>shop.yaml</c>.</summary>
    public const string Shop = """
        # What is at hand and what it costs, in your currency. Change the values to yours.
        currency: EUR
        electricity: 0.31 per kWh
        charge-loss-per-1000-h: 8 %        # of the charge, what leaks away and is replaced
        gases:
          nitrogen: {price: 3.90 per kg, purity: 99.9 %}
          # what the rest is, when its certificate says so: 99.9 % gas with
          #   oxygen: 300 ppm, argon: 400 ppm, nitrogen: 0 ppm, water: 3 ppm, carbon-dioxide: 1 ppm
          methane: {price: 14.00 per kg}
          ethane: {price: 38.00 per kg}
          propane: {price: 3.20 per kg}
          isobutane: {price: 9.50 per kg}
        tubes:                             # for cut lists
          - {tube: 1/4 in ACR, price: 2.90 per m}
          - {tube: 3/8 in ACR, price: 4.40 per m}
        insulation:
          - {material: polyurethane-foam, price: 0.35 per L}
        bought-liquid:                     # for comparison
          nitrogen: 2.40 per L

        """;

    /// <summary>The starter's <c>runs/README.md</c>.</summary>
    public const string Runs = """
        # Runs

        One folder for each run of the cooler, named by date and a word: `2026-03-14-first-liquid`.
        In it: `run.yaml` (what was done, events, weighings, which column is which sensor) and `log.csv` (whatever the logger wrote).

        """;
}
