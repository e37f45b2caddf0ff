using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.CapacitanceMeter;

/// <summary>The LCR meter's commands beside the common ones.</summary>
internal static class CapacitanceMeterCommands
{
    private static readonly NumberRange Hertz = new(20, 2e6, 1000, "HZ");
    private static readonly NumberRange Volts = new(0, 2, 1, "V");
    private static readonly NumberRange Averages = new(1, 256, 1);

    public static void Add(CommandTable table, CapacitanceMeterInstrument meter)
    {
        AddSignal(table, meter);
        AddSwitch(table, meter, "FUNCtion:IMPedance:RANGe:AUTO", s => s.AutoRange, (s, on) => s with { AutoRange = on });
        AddSwitch(table, meter, "CORRection:OPEN:STATe", s => s.OpenCorrection, (s, on) => s with { OpenCorrection = on });
        AddSwitch(table, meter, "CORRection:SHORt:STATe", s => s.ShortCorrection, (s, on) => s with { ShortCorrection = on });
        AddTrigger(table, meter);
        table
            .Add("CORRection:OPEN[:EXECute]", async (arguments, interrupted) =>
            {
                arguments.None();
                await meter.CorrectOpenAsync(interrupted);
                return null;
            })
            .Command("DISPlay:LINE", arguments => meter.Display(arguments.Expect(1, 1).Quoted(0)))
            .Command("SYSTem:BEEPer[:IMMediate]", arguments => arguments.None(meter.Beep));
    }

    private static void AddSignal(CommandTable table, CapacitanceMeterInstrument meter) => table
        // One function is simulated: Cp and D.
        .Command("FUNCtion:IMPedance[:TYPE]", arguments => arguments.Expect(1, 1).Word(0, "CPD"))
        .Query("FUNCtion:IMPedance[:TYPE]?", arguments => arguments.None(() => "CPD"))
        .Command("FREQuency[:CW]", arguments => meter.Settings = meter.Settings with { Hertz = arguments.Expect(1, 1).Number(0, Hertz) })
        .Query("FREQuency[:CW]?", arguments => Arguments.Nr3(arguments.Limit(Hertz) ?? meter.Settings.Hertz))
        .Command("VOLTage[:LEVel]", arguments => meter.Settings = meter.Settings with { Volts = arguments.Expect(1, 1).Number(0, Volts) })
        .Query("VOLTage[:LEVel]?", arguments => Arguments.Nr3(arguments.Limit(Volts) ?? meter.Settings.Volts))
        .Command("APERture", arguments => meter.Settings = meter.Settings with
        {
            Aperture = arguments.Expect(1, 2).Word(0, "SHORt", "MEDium", "LONG"),
            Averages = (int)arguments.NumberOrDefault(1, Averages),
        })
        .Query("APERture?", arguments => arguments.None(() =>
            FormattableString.Invariant($"{meter.Settings.Aperture},{meter.Settings.Averages}")));

    private static void AddTrigger(CommandTable table, CapacitanceMeterInstrument meter) => table
        .Command("TRIGger:SOURce", arguments => meter.Settings = meter.Settings with
        {
            Trigger = arguments.Expect(1, 1).Word(0, "INTernal", "BUS", "EXTernal", "HOLD"),
        })
        .Query("TRIGger:SOURce?", arguments => arguments.None(() => meter.Settings.Trigger))
        .Command("INITiate:CONTinuous", arguments => arguments.Expect(1, 1).Boolean(0))
        .Command("INITiate[:IMMediate]", arguments => arguments.None())
        .Command("ABORt", arguments => arguments.None())
        .Add("*TRG", (arguments, interrupted) => arguments.None(() => meter.TriggerAsync(interrupted)))
        .Add("TRIGger[:IMMediate]", async (arguments, interrupted) =>
        {
            arguments.None();
            await meter.MeasureAsync(interrupted);
            return null;
        })
        .Add("FETCh[:IMPedance][:FORMatted]?", (arguments, interrupted) => arguments.None(() => meter.FetchAsync(interrupted)));

    private static void AddSwitch(
        CommandTable table, CapacitanceMeterInstrument meter, string pattern, Func<CapacitanceMeterSettings, bool> get,
        Func<CapacitanceMeterSettings, bool, CapacitanceMeterSettings> set) => table
        .Command(pattern, arguments => meter.Settings = set(meter.Settings, arguments.Expect(1, 1).Boolean(0)))
        .Query(pattern + "?", arguments => arguments.None(() => get(meter.Settings) ? "1" : "0"));
}
