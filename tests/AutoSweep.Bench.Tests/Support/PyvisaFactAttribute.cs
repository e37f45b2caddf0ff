using System.Diagnostics;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A test that PyVISA, pyvisa-py and pySerial take part in; skipped where they are not installed.</summary>
internal sealed class PyvisaFactAttribute : FactAttribute
{
    public PyvisaFactAttribute()
    {
        if (Python is null)
            Skip = "PyVISA is not installed (apt-get install python3-pyvisa python3-pyvisa-py python3-serial).";
    }

    /// <summary>A Python that has them; the system's own first, since Debian's packages belong to it.</summary>
    internal static string? Python { get; } = new[] { "/usr/bin/python3", "python3" }.FirstOrDefault(HasPyvisa);

    private static bool HasPyvisa(string python)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(python, ["-c", "import pyvisa, pyvisa_py, serial"]) { RedirectStandardError = true })!;
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
