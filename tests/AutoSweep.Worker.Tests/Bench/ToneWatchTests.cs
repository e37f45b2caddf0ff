using AutoSweep.Core.Generator;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class ToneWatchTests : IDisposable
{
    private readonly BenchScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Two_counts_that_agree_name_the_output()
    {
        _scene.Meter.Count(488.1, 488.3);

        var tone = Assert.IsType<ToneSight.Tone>(await LookAsync());
        Assert.Equal(1, tone.Output);
        Assert.Equal(488.2, tone.Hertz, 6);
    }

    [Fact]
    public async Task One_count_among_others_is_never_believed()
    {
        _scene.Meter.Count(488, 700, 536, 700, 590.2, 536, 488, 700, 536, 590.2);

        Assert.IsType<ToneSight.Uncountable>(await LookAsync());
    }

    [Fact]
    public async Task A_miscount_between_two_right_counts_starts_the_run_anew()
    {
        _scene.Meter.Count(488, 976.4, 488, 488);

        Assert.Equal(1, Assert.IsType<ToneSight.Tone>(await LookAsync()).Output);
        Assert.Empty(_scene.Meter.Counts);
    }

    [Fact]
    public async Task Nothing_counted_twice_is_silence()
    {
        _scene.Meter.Count(0, 0);

        Assert.Equal(new ToneSight.Silence(Hum: false), await LookAsync());
    }

    [Theory]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(180.5)]
    public async Task The_mains_and_its_multiples_are_hum(double hertz)
    {
        _scene.Meter.Count(hertz, hertz);

        Assert.Equal(new ToneSight.Silence(Hum: true, hertz), await LookAsync());
    }

    [Fact]
    public async Task A_steady_tone_between_the_profiles_is_foreign_only_after_five_counts()
    {
        _scene.Meter.Count(510, 510, 510, 510, 510);

        Assert.Equal(new ToneSight.Foreign(510), await LookAsync());
        Assert.Empty(_scene.Meter.Counts);
    }

    // Output 36 sounds at 246.94 Hz; the fifth multiple of 50 Hz mains is 250 Hz. 248.4 Hz is 10 cents from either.
    [Theory]
    [InlineData(0.06, typeof(ToneSight.Tone))]
    [InlineData(0.002, typeof(ToneSight.Silence))]
    public async Task What_may_be_hum_or_a_tone_is_a_tone_only_with_a_level(double volts, Type expected)
    {
        using var scene = new BenchScene(gain: 20, GeneratorProfileLibrary.Open("classic-91-50hz"));
        scene.Meter.Count(248.4, 248.4);
        scene.Meter.Shown = () => volts;

        Assert.IsType(expected, await scene.Tones.LookAsync(default));
    }

    [Fact]
    public async Task Without_an_amplifier_a_level_too_low_for_a_tone_is_silence_and_nothing_is_counted()
    {
        using var scene = new BenchScene(gain: 1);
        scene.Meter.Shown = () => 0.0004;

        Assert.IsType<ToneSight.Silence>(await scene.Tones.LookAsync(default));
    }

    [Fact]
    public async Task Without_an_amplifier_four_agreeing_counts_among_many_name_the_output()
    {
        using var scene = new BenchScene(gain: 1);
        scene.Meter.Shown = () => 0.004;
        scene.Meter.Count(0, 488, 0, 812, 230, 488, 0, 0, 488.2, 640, 0, 488);

        Assert.Equal(1, Assert.IsType<ToneSight.Tone>(await scene.Tones.LookAsync(default)).Output);
        Assert.Empty(scene.Meter.Counts);
    }

    [Fact]
    public async Task Without_an_amplifier_three_agreeing_counts_are_not_enough()
    {
        using var scene = new BenchScene(gain: 1);
        scene.Meter.Shown = () => 0.004;
        scene.Meter.Count(488, 488, 488);
        scene.Meter.Heard = () => 0;

        Assert.IsType<ToneSight.Uncountable>(await scene.Tones.LookAsync(default));
    }

    [Fact]
    public async Task The_mains_is_learnt_from_the_tones_so_that_a_slow_motor_does_not_confuse()
    {
        foreach (var output in new[] { 1, 2, 3, 4 })
        {
            _scene.Meter.Count(_scene.Tone(output) * 0.995, _scene.Tone(output) * 0.995);
            Assert.Equal(output, Assert.IsType<ToneSight.Tone>(await LookAsync()).Output);
        }

        Assert.Equal(0.995, _scene.Tones.MainsRatio, 6);
    }

    private Task<ToneSight> LookAsync() => _scene.Tones.LookAsync(default);
}
