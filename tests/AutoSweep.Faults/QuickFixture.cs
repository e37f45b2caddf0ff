using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Faults;

/// <summary>The simulated relay fixture without a wire: the worker's own choice of relays, by the bench's calibration sheet.</summary>
internal sealed class QuickFixture(CalibrationSheet sheet, SimulatedBench bench, JumpingClock clock) : ICapacitanceFixture
{
    private readonly RelayChooser chooser = new(Value(sheet.StrayPicofarads), [.. sheet.RelaysPicofarads.Select(Value)]);
    private RelaySet present;

    public string Serial => sheet.FixtureSerial;

    public Capacitance Smallest => chooser.Smallest;

    public Capacitance Largest => chooser.Largest;

    public Task<Capacitance> SetAsync(Capacitance wanted, CancellationToken cancellationToken)
    {
        var choice = chooser.Choose(wanted, present);
        Drive(choice.Closed);
        return Task.FromResult(choice.Total);
    }

    public Task<bool> StandsAsync(CancellationToken cancellationToken) => Task.FromResult(true);

    public Task OpenAllAsync(CancellationToken cancellationToken)
    {
        Drive(default);
        return Task.CompletedTask;
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private void Drive(RelaySet closed)
    {
        present = closed;
        var settled = bench.WithRelays((bank, at) =>
        {
            bank.Drive((uint)closed.Mask, at);
            return bank.SettledAt;
        });
        if (settled > clock.Now) clock.Pass(settled - clock.Now);
    }

    private static Capacitance Value(double picofarads) => new((long)Math.Round(picofarads));
}
