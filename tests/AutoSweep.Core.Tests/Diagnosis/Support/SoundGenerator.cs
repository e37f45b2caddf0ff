using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Core.Tests.Diagnosis.Support;

/// <summary>The survey and sweep of a sound 91-output generator, to be spoilt by a test; its outputs scatter by a decibel (invented).</summary>
internal sealed class SoundGenerator
{
    private readonly GeneratorProfile _profile = GeneratorProfileLibrary.Open("classic-91-60hz");
    private readonly SortedDictionary<int, OutputSurveyed> _surveyed = [];
    private readonly SortedDictionary<int, OutputSwept> _swept = [];

    public SoundGenerator()
    {
        foreach (var output in _profile.Outputs)
        {
            // Golden-ratio steps spread evenly: -1 to 1 dB.
            var level = output.ExpectedMillivolts!.Value * Math.Pow(10, ((output.Number * 0.618034 % 1 * 2) - 1) / 20);
            _surveyed[output.Number] = new() { Output = output.Number, ToneHertz = _profile.ToneOf(output).Hertz, Millivolts = level,
                NoiseMillivolts = 0.003 * level, WheelSwing = 0.005 + (output.Number * 0.381966 % 1 * 0.015), WheelSwingUncertainty = 0.001, Flags = [] };
            if (output.Capacitor is { } capacitor)
                _swept[output.Number] = Peak(output, capacitor, level);
        }
    }

    public void Survey(int output, Func<OutputSurveyed, OutputSurveyed> spoil) => _surveyed[output] = spoil(_surveyed[output]);

    public void SurveyAll(Func<OutputSurveyed, OutputSurveyed> spoil)
    {
        foreach (var output in _surveyed.Keys.ToList())
            Survey(output, spoil);
    }

    public void Sweep(int output, Func<OutputSwept, OutputSwept> spoil) => _swept[output] = spoil(_swept[output]);

    public void SweepAll(Func<OutputSwept, OutputSwept> spoil)
    {
        foreach (var output in _swept.Keys.ToList())
            Sweep(output, spoil);
    }

    public JobState Fold() => Tests.Support.Some.Fold([new JobOpened("AutoSweep", _profile), .. _surveyed.Values, .. _swept.Values]);

    private OutputSwept Peak(GeneratorOutput output, FilterCapacitor capacitor, double level) => new()
    {
        Output = output.Number,
        ToneHertz = _profile.ToneOf(output).Hertz,
        Reason = PeakStopReason.BoundReached,
        PeakPicofarads = capacitor.ExpectedPicofarads,
        PeakSdPicofarads = 100,
        HalfWidthPicofarads = capacitor.ExpectedPicofarads / 10.0,
        Q = 10,
        PeakMillivolts = level,
        Law = ResponseLaw.Series,
        Readings = 8,
    };
}
