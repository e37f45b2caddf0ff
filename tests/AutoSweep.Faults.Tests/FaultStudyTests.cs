using AutoSweep.Core.Diagnosis;
using Xunit.Abstractions;

namespace AutoSweep.Faults.Tests;

/// <summary>
/// 200 simulated generators with none or three to eight of eleven kinds of fault, surveyed and swept by the worker's own stages.
/// </summary>
/// <remarks>
/// A fault counts when its effect is more than twice the noise of the quantity in which it is seen; <c>PlantedSize</c> says kind by kind which
/// that is. Old capacitors are measured as they come off, as the job's routine has it. The sizes planted stand in <c>FaultDraw</c>.
/// </remarks>
public sealed class FaultStudyTests(ITestOutputHelper output)
{
    private static readonly Lazy<FaultStudyResult> Study = new(() => FaultStudy.Run(generators: 200, seed: 1));

    [Fact]
    public void Of_planted_faults_above_twice_the_noise_98_in_100_are_named_at_their_output()
    {
        output.WriteLine(Study.Value.ConfusionTable());
        output.WriteLine(Study.Value.NamedByMultiple());
        foreach (var miss in Study.Value.Misses())
            output.WriteLine(miss);

        Assert.InRange(Study.Value.NamedShare, 0.98, 1);
    }

    [Fact]
    public void Ten_healthy_generators_raise_one_false_alarm_at_most()
    {
        Assert.Equal(50, Study.Value.Healthy.Count());
        Assert.InRange(Study.Value.FalseAlarmsPerHealthy, 0, 0.1);
    }

    [Fact]
    public void Every_one_of_the_eleven_kinds_is_planted_often_enough_to_be_judged() =>
        Assert.All(Enum.GetValues<GeneratorFault>(), kind => Assert.InRange(Study.Value.Counted.Count(one => one.Planted.Fault == kind), 30, 150));
}
