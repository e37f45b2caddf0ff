using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Meter;

/// <summary>The bench meter as its socket shows it: a six-and-a-half-digit meter of the 34401A command set.</summary>
internal sealed class MeterInstrument : IInstrument, IDisposable
{
    private readonly SimulatedBench bench;
    private readonly Measurement measurement;
    private readonly ScpiStatus status = new();
    private readonly ScpiInterpreter interpreter;
    private MeterSettings settings = new();

    public MeterInstrument(MeterDefinition meter, SimulatedBench bench)
    {
        this.bench = bench;
        measurement = new(meter, bench);
        var table = new CommandTable().AddCommon(
            status, meter.Identity, Reset, measurement.SettledAsync, () => interpreter!.AnswerWaiting);
        MeasuringCommands.Add(table, this);
        SettingCommands.Add(table, this);
        interpreter = new(table, status);
        Apply(settings);
    }

    /// <summary>The meter has beeped; the hands hear it.</summary>
    public event Action<TimeSpan>? Beeped;

    /// <summary>The meter's display shows another text; the hands read it.</summary>
    public event Action<string>? Displayed;

    public MeterSettings Settings => settings;

    public Measurement Measurement => measurement;

    public ValueTask<string?> ExecuteAsync(string message, CancellationToken interrupted) => interpreter.ExecuteAsync(message, interrupted);

    public void Report(ScpiError error) => status.Report(error);

    public void Dispose() => measurement.Dispose();

    /// <summary>Shows a text; a display of twelve places cuts it off (34401A user's guide, from memory).</summary>
    public void Display(string text) => Displayed?.Invoke(text.Length > 12 ? text[..12] : text);

    public void Beep() => Beeped?.Invoke(bench.Clock.Now);

    /// <summary>Takes new settings; a change that switches the signal path empties the detector.</summary>
    public void Apply(MeterSettings next)
    {
        var switched = (next.Function, next.FilterHertz, next.Range, next.AutoRange)
            != (settings.Function, settings.FilterHertz, settings.Range, settings.AutoRange);
        settings = next;
        bench.WithDetector(detector =>
        {
            if (switched) detector.Empty();
            detector.TimeConstantSeconds = next.TimeConstantSeconds;
        });
    }

    /// <summary>CONFigure: everything as after *RST but the function and the range.</summary>
    public void Configure(MeterSettings next)
    {
        measurement.Abort();
        Apply(next);
    }

    /// <summary>READ?: start and fetch. A message that interrupts the query ends the measurement too.</summary>
    public async ValueTask<string?> ReadAsync(CancellationToken interrupted)
    {
        if (settings.Trigger == TriggerSource.Bus) throw new ScpiErrorException(ScpiError.TriggerDeadlock);
        measurement.Start(settings);
        try
        {
            return await measurement.FetchAsync(interrupted);
        }
        catch (OperationCanceledException)
        {
            measurement.Abort();
            throw;
        }
    }

    private void Reset() => Configure(new());
}
