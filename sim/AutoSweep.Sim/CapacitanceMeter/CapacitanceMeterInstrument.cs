using System.Globalization;
using System.Numerics;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Scpi;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Sim.CapacitanceMeter;

/// <summary>The LCR meter as its socket shows it: Cp and D, of the E4980A command set.</summary>
internal sealed class CapacitanceMeterInstrument : IInstrument
{
    private readonly CapacitanceMeterDefinition meter;
    private readonly SimulatedBench bench;
    private readonly CapacitanceClips clips;
    private readonly Random random;
    private readonly ScpiStatus status = new();
    private readonly ScpiInterpreter interpreter;
    private double correction;
    private string? last;

    public CapacitanceMeterInstrument(CapacitanceMeterDefinition meter, SimulatedBench bench, CapacitanceClips clips, int seed)
    {
        (this.meter, this.bench, this.clips) = (meter, bench, clips);
        random = new(seed);
        correction = meter.OpenCorrectionPicofarads;
        var table = new CommandTable().AddCommon(
            status, meter.Identity, () => Settings = new(), _ => ValueTask.CompletedTask, () => interpreter!.AnswerWaiting);
        CapacitanceMeterCommands.Add(table, this);
        interpreter = new(table, status);
    }

    /// <summary>The meter has beeped; the hands hear it.</summary>
    public event Action<TimeSpan>? Beeped;

    /// <summary>Its display's text line has changed; the hands read it.</summary>
    public event Action<string>? Displayed;

    public CapacitanceMeterSettings Settings { get; set; } = new();

    public ValueTask<string?> ExecuteAsync(string message, CancellationToken interrupted) => interpreter.ExecuteAsync(message, interrupted);

    public void Report(ScpiError error) => status.Report(error);

    public void Beep() => Beeped?.Invoke(bench.Clock.Now);

    public void Display(string text) => Displayed?.Invoke(text);

    /// <summary>*TRG: one reading, and its result as the answer.</summary>
    public async ValueTask<string?> TriggerAsync(CancellationToken interrupted)
    {
        if (Settings.Trigger != "BUS") throw new ScpiErrorException(ScpiError.TriggerIgnored);
        await MeasureAsync(interrupted);
        return last;
    }

    /// <summary>One reading, kept for FETCh?.</summary>
    public async ValueTask MeasureAsync(CancellationToken interrupted) => last = Result(await SeenAsync(interrupted));

    /// <summary>FETCh?: the last reading; where the meter triggers itself, a new one.</summary>
    public async ValueTask<string?> FetchAsync(CancellationToken interrupted)
    {
        if (Settings.Trigger == "INT") await MeasureAsync(interrupted);
        return last ?? "+9.90000E+37,+9.90000E+37,-1";
    }

    /// <summary>CORRection:OPEN: what is at the clips now is taken off from now on.</summary>
    public async ValueTask CorrectOpenAsync(CancellationToken interrupted) =>
        correction = Noisy((await SeenAsync(interrupted)).Imaginary / Omega * 1e12);

    private double Omega => 2 * Math.PI * Settings.Hertz;

    // What is clipped or switched during a reading is seen in part.
    private async ValueTask<Complex> SeenAsync(CancellationToken interrupted)
    {
        var over = clips.BeginReading();
        var before = clips.Admittance(Omega);
        await bench.Clock.WaitUntilAsync(bench.Clock.Now + Settings.ReadTime, interrupted);
        over();
        return ((before + clips.Admittance(Omega)) / 2) + new Complex(0, Omega * meter.LeadPicofarads * 1e-12);
    }

    private string Result(Complex admittance)
    {
        var picofarads = (admittance.Imaginary / Omega * 1e12) - (Settings.OpenCorrection ? correction : 0);
        var shown = Noisy(picofarads * (1 + (meter.GainErrorPercent / 100)));
        // The dissipation of next to nothing is anything (bench practice); a real meter shows noise there as well.
        var loss = (admittance.Real / Omega * 1e12) + (meter.NoisePicofarads * Gauss());
        var dissipation = (loss / Math.Max(Math.Abs(picofarads), meter.NoisePicofarads)) + (meter.DissipationNoise * Gauss());
        return string.Create(CultureInfo.InvariantCulture, $"{Number(shown * 1e-12)},{Number(dissipation)},+0");
    }

    private double Noisy(double picofarads) =>
        (picofarads * (1 + (meter.NoisePercentOfReading / 100 * Gauss()))) + (meter.NoisePicofarads * Gauss());

    private double Gauss() => Normal.Sample(random, 0, 1);

    private static string Number(double value) => value.ToString("+0.00000E+00;-0.00000E+00", CultureInfo.InvariantCulture);
}
