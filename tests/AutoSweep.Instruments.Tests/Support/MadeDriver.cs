namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A made-up driver's folder that is in order, for tests that make one slip in it.</summary>
internal sealed class MadeDriver : IDisposable
{
    private readonly DirectoryInfo _parent = Directory.CreateTempSubdirectory("autosweep-kit-");

    public MadeDriver()
    {
        Directory.CreateDirectory(Path.Combine(Folder, "sessions"));
        Write("driver.json", """
            {
              "$schema": "../driver.schema.json",
              "name": "made",
              "title": "a made-up meter",
              "identity": [{ "maker": "Invented*", "model": "*" }],
              "link": { "serialSetUp": [] },
              "setUp": [{ "command": "*RST", "required": true }],
              "errorQuery": "SYST:ERR?",
              "level": {
                "setUp": [
                  { "command": "VOLT:AC:RANG {range}", "required": true },
                  { "command": "VOLT:AC:BAND {bandwidth}", "required": false }
                ],
                "rangesVolts": [0.1, 1, 10],
                "overRange": 1.2,
                "bandwidths": [{ "hertz": 20, "fromToneHertz": 100, "settleSeconds": 1, "source": "made up" }],
                "settleWithoutBandwidthSeconds": 1.5,
                "read": "READ?"
              }
            }
            """);
        Write("commands.txt", """
            # Source: made up
            *RST
            *IDN?
            [SENSe:]VOLTage:AC:RANGe
            [SENSe:]VOLTage:AC:BANDwidth
            SYSTem:ERRor[:NEXT]?
            READ?

            """);
        Write("README.md", "No real unit has confirmed this.\n");
        Write("sessions/one.txt", """
            # Source: made up

            ! open
            > *IDN?
            < Invented Instruments,M1,0,1.0
            > SYST:ERR?
            < 0,"No error"
            > *RST
            > SYST:ERR?
            < 0,"No error"

            # a remark
            # a remark
            # a remark
            # a remark
            # a remark

            ! prepare 0.02 523
            > VOLT:AC:RANG 0.1
            > SYST:ERR?
            < 0,"No error"

            > VOLT:AC:BAND 20
            > SYST:ERR?
            < 0,"No error"


            # a value
            ! read
            > READ?
            < +5.0E-03
            = value 0.005
            ! read
            > READ?
            < +9.9E37
            = overload


            ! close

            """);
    }

    public string Folder => Path.Combine(_parent.FullName, "made");

    public void Change(string file, string right, string wrong)
    {
        var path = Path.Combine(Folder, file);
        var text = File.ReadAllText(path);
        var at = text.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{right} is not in {file}");
        File.WriteAllText(path, text[..at] + wrong + text[(at + right.Length)..]);
    }

    public void Dispose() => _parent.Delete(recursive: true);

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(Folder, file), text.ReplaceLineEndings("\n"));
}
