"""An independent VISA client talks to the simulated instruments: PyVISA over pyvisa-py.

talk.py METER FIXTURE CAPACITANCE_METER    resource names, as autosweep-sim serve prints them

Prints a JSON object of what was answered. Nothing here is taken from the product: a user of PyVISA would write the same.
"""
import json
import sys

import pyvisa

resources = pyvisa.ResourceManager("@py")


def opened(name):
    instrument = resources.open_resource(name)
    instrument.read_termination = instrument.write_termination = "\n"
    instrument.timeout = 20000
    return instrument


def talk_to_meter(meter):
    answers = {"identity": meter.query("*IDN?")}
    meter.write("CONF:VOLT:AC 1")
    answers["configuration"] = meter.query("CONF?")
    answers["reading"] = meter.query("READ?")
    meter.write("SAMP:COUN 5")
    answers["burst"] = meter.query_ascii_values("READ?")
    meter.write("SAMP:COUN 1")
    meter.write("VOLT:AC:RANGGE 1")
    answers["misspelt"] = [meter.query("SYST:ERR?"), meter.query("SYST:ERR?")]
    return answers | time_out(meter)


def time_out(meter):
    """A reading that waits for a trigger which never comes: the client gives up, the meter is still usable."""
    patience, meter.timeout = meter.timeout, 300
    meter.write("TRIG:SOUR EXT")
    try:
        answers = {"silence": meter.query("READ?")}
    except pyvisa.errors.VisaIOError as error:
        answers = {"silence": error.abbreviation}
    meter.timeout = patience
    answers["interrupted"] = meter.query("SYST:ERR?")
    meter.write("TRIG:SOUR IMM")
    answers["readingAfter"] = meter.query("READ?")
    answers["errorsAfter"] = meter.query("SYST:ERR?")
    return answers


def talk_to_fixture(fixture):
    answers = {"identity": fixture.query("*IDN?")}
    fixture.write("ROUT:CLOS (@1,3)")
    answers["closed"] = [fixture.query("*OPC?"), fixture.query("ROUT:CLOS:STAT?")]
    fixture.write("ROUT:CLOS (@99)")
    answers["refused"] = [fixture.query("SYST:ERR?"), fixture.query("ROUT:CLOS:STAT?")]
    fixture.write("ROUT:OPEN:ALL")
    answers["opened"] = [fixture.query("*OPC?"), fixture.query("ROUT:CLOS:STAT?")]
    return answers


def talk_to_capacitance_meter(meter, fixture):
    """The LCR meter's clips are on the fixture's: a relay that closes must show in what it reads."""
    answers = {"identity": meter.query("*IDN?")}
    meter.write("FUNC:IMP CPD;:FREQ 1000;:TRIG:SOUR BUS")
    answers["open"] = [float(part) for part in meter.query("*TRG").split(",")]
    fixture.write("ROUT:CLOS (@13)")
    fixture.query("*OPC?")
    answers["closed"] = [float(part) for part in meter.query("*TRG").split(",")]
    answers["errors"] = meter.query("SYST:ERR?")
    return answers


meter, fixture, capacitance_meter = (opened(name) for name in sys.argv[1:4])
print(json.dumps({
    "meter": talk_to_meter(meter),
    "fixture": talk_to_fixture(fixture),
    "capacitanceMeter": talk_to_capacitance_meter(capacitance_meter, fixture),
}))
