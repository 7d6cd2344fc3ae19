using Coldwright.Fluids.EquationsOfState;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>A model's evaluation at one temperature and pressure, shared by stability, split and certificate.</summary>
internal sealed class FlashWorkspace
{
    public const int MaximumPhases = 6;

    public readonly HelmholtzModel Model;
    public readonly PhaseEvaluation Evaluation;
    public readonly int Count;
    public readonly double[] Z;
    private readonly double[] _wilson;
    private bool _wilsonKnown;
    public double Temperature, Pressure;
    private readonly double[] _y;

    public FlashWorkspace(HelmholtzModel model)
    {
        Model = model;
        Evaluation = model.CreateEvaluation();
        Count = model.Count;
        (Z, _wilson, _y) = (new double[Count], new double[Count], new double[Count]);
    }

    public void Set(double temperatureK, double pressurePa, ReadOnlySpan<double> z)
    {
        (Temperature, Pressure) = (temperatureK, pressurePa);
        z.CopyTo(Z);
        _wilsonKnown = false;
    }

    /// <summary>The same composition at another temperature and pressure.</summary>
    public void Move(double temperatureK, double pressurePa)
    {
        (Temperature, Pressure) = (temperatureK, pressurePa);
        _wilsonKnown = false;
    }

    /// <summary>Wilson's estimate of the equilibrium ratios (A modified Redlich-Kwong equation of state, AIChE 65th meeting, 1968).</summary>
    public double[] WilsonK
    {
        get
        {
            if (_wilsonKnown) return _wilson;
            for (int i = 0; i < Count; i++)
            {
                var s = Model.Substances[i];
                double ln = Math.Log(s.CriticalPressurePa / Pressure) + 5.373 * (1 + s.AcentricFactor) * (1 - s.CriticalTemperatureK / Temperature);
                _wilson[i] = Math.Exp(Math.Clamp(ln, -200, 200));
            }
            _wilsonKnown = true;
            return _wilson;
        }
    }

    /// <summary>Density and fugacity coefficients on the wanted branch, or on the other when it has no root; the phase is then given the branch that its density belongs to (<see cref="DensityRoots.Name"/>). A trial phase gets no <see cref="PhaseBuffer.LnX"/>. False: no root.</summary>
    public bool Evaluate(PhaseBuffer phase, Branch wanted, bool trial = false)
    {
        var e = Evaluation;
        e.SetIsotherm(Temperature, phase.X);
        double rho = DensityRoots.Find(e, Pressure, wanted, phase.Density);
        var branch = wanted;
        if (double.IsNaN(rho))
        {
            branch = wanted == Branch.Liquid ? Branch.Vapour : Branch.Liquid;
            rho = DensityRoots.Find(e, Pressure, branch);
            if (double.IsNaN(rho)) return false;
        }
        phase.Branch = DensityRoots.Name(e, Pressure, rho, branch);
        Fugacity(phase, rho, trial);
        return true;
    }

    /// <summary>As <see cref="Evaluate"/>, on the branch of lower Gibbs energy.</summary>
    public bool EvaluateBest(PhaseBuffer phase)
    {
        var e = Evaluation;
        e.SetIsotherm(Temperature, phase.X);
        double vapour = DensityRoots.Find(e, Pressure, Branch.Vapour), liquid = DensityRoots.Find(e, Pressure, Branch.Liquid);
        if (double.IsNaN(vapour) && double.IsNaN(liquid)) return false;
        bool both = !double.IsNaN(vapour) && !double.IsNaN(liquid) && Math.Abs(vapour - liquid) > 1e-9 * liquid;
        if (!both)
        {
            double only = double.IsNaN(vapour) ? liquid : vapour;
            phase.Branch = DensityRoots.Name(e, Pressure, only, double.IsNaN(vapour) ? Branch.Liquid : Branch.Vapour);
            Fugacity(phase, only);
            return true;
        }
        phase.Branch = Branch.Vapour;
        Fugacity(phase, vapour);
        double gv = phase.ResidualGibbs;
        phase.Branch = Branch.Liquid;
        Fugacity(phase, liquid);
        if (phase.ResidualGibbs > gv)
        {
            phase.Branch = Branch.Vapour;
            Fugacity(phase, vapour);
        }
        return true;
    }

    private void Fugacity(PhaseBuffer phase, double rho, bool trial = false)
    {
        var e = Evaluation;
        e.Gradient(rho);
        phase.Density = rho;
        phase.DividingDensity = e.DividingDensity;
        double z = Pressure / (rho * e.GasConstant * Temperature), lnZ = Math.Log(z);
        phase.ResidualGibbs = e.A - lnZ + z - 1;
        phase.ResidualEnthalpy = z - 1 - e.ATemperature;
        phase.Rounding = 1e-15 * (1 + e.AMagnitude);
        for (int i = 0; i < Count; i++) phase.LnPhi[i] = e.G[i] - lnZ;
        if (trial) return;
        for (int i = 0; i < Count; i++) phase.LnX[i] = Math.Log(phase.X[i]);
    }

    /// <summary>Makes a phase that was evaluated before the one evaluated last.</summary>
    public void Resume(PhaseBuffer phase) => Evaluation.SetIsotherm(Temperature, phase.X);

    /// <summary>
    /// Fills the phase's n d ln f_i/d n_j = delta_ij/x_i + H_ij - y_i y_j/Q at constant T, p; y_i = 1 + sum_j H_ij x_j,
    /// Q = sum x_i y_i. The diagonal's 1/x_i is left out (it is added, scaled, where it is used). The phase must be the
    /// one evaluated last.
    /// </summary>
    public void Derivatives(PhaseBuffer phase)
    {
        Evaluation.Hessian(phase.Density);
        Composition(phase);
    }

    /// <summary>
    /// As <see cref="Derivatives"/>, and how the phase answers to temperature at constant p: partial molar residual enthalpies over RT,
    /// h_i = -T d ln phi_i/dT = -(T dG_i/dT + y_i theta + 1) with theta = T/rho drho/dT, and the residual heat capacity over R.
    /// </summary>
    public void ThermalDerivatives(PhaseBuffer phase)
    {
        var e = Evaluation;
        e.Thermal(phase.Density);
        Composition(phase);
        double slope = 1 + 2 * e.ADensity + e.ADensity2, cross = 1 + e.ADensity + e.ATemperatureDensity, theta = -cross / slope;
        for (int i = 0; i < Count; i++) phase.PartialEnthalpy[i] = -(e.GTemperature[i] + _y[i] * theta + 1);
        phase.ResidualHeatCapacity = cross * cross / slope - 1 - 2 * e.ATemperature - e.ATemperature2;
    }

    private void Composition(PhaseBuffer phase)
    {
        var e = Evaluation;
        int n = Count;
        double q = 0;
        for (int i = 0; i < n; i++)
        {
            double y = 1;
            for (int j = 0; j < n; j++) y += e.H[i * n + j] * phase.X[j];
            _y[i] = y;
            q += phase.X[i] * y;
        }
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                phase.C[i * n + j] = e.H[i * n + j] - _y[i] * _y[j] / q;
    }
}
